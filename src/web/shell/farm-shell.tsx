import './shell.css';
import { IconDots, IconList } from '@tabler/icons-react';
import { Suspense, useEffect, useRef, useState, type ReactNode } from 'react';
import { Link, useLocation } from 'wouter';
import type { SavedFarm } from '../api/queries.js';
import { IN_BAR, PLACES, type Place } from './places.js';
import { Working } from './states.js';
import { SchemeChoice } from './scheme-choice.js';
import { useTitleFocus } from './use-title-focus.js';

/** The frame around every screen of one farm. */
export function FarmShell({
  farm,
  notice,
  children,
}: {
  farm: SavedFarm;
  /** What is said at the foot of every screen. */
  notice: ReactNode;
  children: ReactNode;
}) {
  const [path] = useLocation();
  const page = useRef<HTMLElement>(null);
  useTitleFocus(page, path, farm.name);
  return (
    <div className="shell">
      <a
        className="shell-skip"
        href="#page"
        onClick={(event) => {
          event.preventDefault();
          page.current?.focus();
        }}
      >
        To the page
      </a>
      <header className="shell-head">
        <Link href="/" className="shell-name">
          Broodfold
        </Link>
        <span className="shell-farm">{farm.name}</span>
      </header>
      <Places key={path} base={`/farm/${farm.id}`} path={path} />
      <main id="page" ref={page} tabIndex={-1} className="shell-page">
        <Suspense fallback={<Working label="Loading" />}>{children}</Suspense>
        {notice}
      </main>
    </div>
  );
}

/** Where one can go; made anew with each place, so that what is behind the bar closes. */
function Places({ base, path }: { base: string; path: string }) {
  const [isOpen, setOpen] = useState(false);
  const more = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (!isOpen) return;
    const close = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      setOpen(false);
      more.current?.focus();
    };
    document.addEventListener('keydown', close);
    return () => document.removeEventListener('keydown', close);
  }, [isOpen]);
  const link = (place: Place) => (
    <li key={place.path}>
      <PlaceLink place={place} href={`${base}${place.path}`} path={path} />
    </li>
  );
  const rest = PLACES.slice(IN_BAR);
  return (
    <nav className="shell-nav" aria-label="Places">
      <ul className="shell-bar">
        {PLACES.slice(0, IN_BAR).map(link)}
        <li className="shell-more">
          <button
            ref={more}
            type="button"
            className="shell-link"
            aria-expanded={isOpen}
            aria-controls="shell-rest"
            data-here={rest.some((place) => isAt(`${base}${place.path}`, path)) || undefined}
            onClick={() => setOpen(!isOpen)}
          >
            <IconDots aria-hidden />
            <span>More</span>
          </button>
        </li>
      </ul>
      <div id="shell-rest" className="shell-rest" data-open={isOpen || undefined}>
        <ul>
          {rest.map(link)}
          <li>
            <Link href="/" className="shell-link">
              <IconList aria-hidden />
              <span>All farms</span>
            </Link>
          </li>
        </ul>
        <SchemeChoice />
      </div>
    </nav>
  );
}

function PlaceLink({ place, href, path }: { place: Place; href: string; path: string }) {
  return (
    <Link
      href={href}
      className="shell-link"
      aria-current={isAt(href, path) ? (path === href ? 'page' : 'true') : undefined}
    >
      {place.icon}
      <span className="shell-long">{place.label}</span>
      <span className="shell-short">{place.short}</span>
    </Link>
  );
}

const isAt = (href: string, path: string): boolean => path === href || path.startsWith(`${href}/`);
