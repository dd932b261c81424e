import './shell.css';
import { AppShell, Burger, Group, NavLink, Text } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import {
  IconBook,
  IconBuildingWarehouse,
  IconChecklist,
  IconEgg,
  IconHome,
  IconPlant2,
  IconSunrise,
} from '@tabler/icons-react';
import type { ReactNode } from 'react';
import { Link, useLocation } from 'wouter';
import type { SavedFarm } from '../api/queries.js';

/** The frame around every screen of one farm. */
export function FarmShell({ farm, children }: { farm: SavedFarm; children: ReactNode }) {
  const [isOpen, { toggle, close }] = useDisclosure(false);
  const [path] = useLocation();
  const base = `/farm/${farm.id}`;
  const links = [
    { href: `${base}/today`, label: 'Today', icon: <IconSunrise aria-hidden /> },
    { href: `${base}/batches`, label: 'Batches', icon: <IconEgg aria-hidden /> },
    { href: `${base}/pasture`, label: 'Grass and cattle', icon: <IconPlant2 aria-hidden /> },
    { href: `${base}/work`, label: 'Work', icon: <IconChecklist aria-hidden /> },
    {
      href: `${base}/facilities`,
      label: 'Buildings and gear',
      icon: <IconBuildingWarehouse aria-hidden />,
    },
    { href: `${base}/place`, label: 'Your place', icon: <IconHome aria-hidden /> },
    { href: `${base}/sources`, label: 'Where numbers come from', icon: <IconBook aria-hidden /> },
  ];
  return (
    <AppShell
      header={{ height: 56 }}
      navbar={{ width: 230, breakpoint: 'sm', collapsed: { mobile: !isOpen } }}
      padding="md"
    >
      <AppShell.Header>
        <Group h="100%" px="md" gap="sm" wrap="nowrap">
          <Burger
            opened={isOpen}
            onClick={toggle}
            hiddenFrom="sm"
            className="menu-button"
            aria-label={isOpen ? 'Close menu' : 'Open menu'}
          />
          <Text component={Link} href="/" fw={700} fz="lg" c="inherit" td="none">
            Broodfold
          </Text>
          <Text c="dimmed" truncate>
            {farm.name}
          </Text>
        </Group>
      </AppShell.Header>
      <AppShell.Navbar p="sm" aria-label="Sections">
        {links.map(({ href, label, icon }) => (
          <NavLink
            key={href}
            component={Link}
            href={href}
            label={label}
            leftSection={icon}
            active={path.startsWith(href)}
            onClick={close}
            py="md"
          />
        ))}
        <NavLink component={Link} href="/" label="All farms" onClick={close} mt="auto" py="md" />
      </AppShell.Navbar>
      <AppShell.Main>{children}</AppShell.Main>
    </AppShell>
  );
}
