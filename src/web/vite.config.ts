import react from '@vitejs/plugin-react';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { libraryVariables } from './look/library-variables.js';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** What a form says of its fields, which is little beside the plans that are made of them. */
const WORDS = /[\\/]shared[\\/](farm|units|calendar|problems)[\\/]/;
/** What choosing a farm and the first form need beside Today: a weak line waits for no more. */
const FIRST_FORM = new RegExp(
  [
    '@mantine.core.esm.components.(ActionIcon|Checkbox|NativeSelect|Switch|Table)[\\\\/]',
    '@mantine.core.esm.components.(Anchor|Card|Container|FileButton|FileInput|SimpleGrid|Stack|Title)[\\\\/]',
    '@mantine.core.esm.components.Combobox.(ComboboxChevron|get-parsed|Combobox.module)',
    'web.fields.(date-input|kept-draft|month-day-input|no-position|select)[.]',
    'web.screens.farm.(estimate-facts|farm-problems|month-table|pasted-months)[.]',
    'web.api.start-queries',
  ].join('|'),
);

export default defineConfig({
  root: here('.'),
  plugins: [
    react(),
    libraryVariables(),
    scriptFirst(),
    VitePWA({
      strategies: 'generateSW',
      // The page asks for its worker itself, once it has come to rest.
      injectRegister: false,
      registerType: 'autoUpdate',
      manifest: {
        name: 'Broodfold',
        short_name: 'Broodfold',
        description: 'One dated plan for the animals of a small farm.',
        start_url: '/',
        scope: '/',
        display: 'standalone',
        background_color: '#faf7ef',
        theme_color: '#faf7ef',
        icons: [
          { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
          { src: 'icon-edge-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
          { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' },
        ],
      },
      workbox: {
        importScripts: ['/open-notice.js'],
        globPatterns: ['**/*.{html,js,css,woff2,svg,png}'],
        // The solver of feed mixes is large: it is fetched, and kept, when the mixer is opened.
        globIgnores: ['**/load-solver-*.js'],
        // The page comes from the service while there is signal, so that both are of one program;
        // without signal it comes out of the store, as its scripts always do. What the service
        // answers is never kept here.
        directoryIndex: null as unknown as string,
        navigateFallback: null as unknown as string,
        runtimeCaching: [
          {
            urlPattern: /\/assets\/(load-solver-[^/]+\.js|highs-[^/]+\.wasm)$/,
            handler: 'CacheFirst',
            options: { cacheName: 'solver', expiration: { maxEntries: 4 } },
          },
          {
            urlPattern: ({ request, url }) =>
              request.mode === 'navigate' && !url.pathname.startsWith('/api/'),
            // This goes into the worker as it stands: it can name nothing from here.
            handler: async ({ request }) => {
              try {
                // Longer than a house's network takes, short enough to stand in the barn for.
                return await fetch(request, { signal: AbortSignal.timeout(3000) });
              } catch {
                const kept = await caches.match('/index.html', { ignoreSearch: true });
                return kept ?? Response.error();
              }
            },
          },
        ],
        cleanupOutdatedCaches: true,
        clientsClaim: true,
        skipWaiting: true,
      },
    }),
  ],
  build: {
    outDir: here('../../dist/web'),
    emptyOutDir: true,
    // Phones of 2023: light-dark() of the tokens is turned into what they know.
    cssTarget: ['chrome111', 'safari16.4', 'firefox114'],
    // Charts are a chunk of their own, loaded when the first plan is opened.
    chunkSizeWarningLimit: 600,
    // What Today needs is one file, and what several screens share are five: a phone spends longer
    // on each file than on what is in it.
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [
            { name: 'first', tags: ['$initial'] },
            { name: 'words', test: WORDS, minShareCount: 2 },
            { name: 'form', test: FIRST_FORM, minShareCount: 2 },
            { name: 'plans', test: /[\\/]shared[\\/]/, minShareCount: 2 },
            { name: 'charts', test: /[\\/](recharts|charts)[\\/]/, minShareCount: 2 },
            { name: 'parts', minShareCount: 2 },
          ],
        },
      },
    },
  },
  server: { proxy: { '/api': 'http://127.0.0.1:3210' } },
});

/**
 * Puts what the build adds at the top of the page's head: a browser asks in the order of the page, and
 * a slow phone asked for the script a tenth of a second after the letters that it draws with.
 */
function scriptFirst(): Plugin {
  const ADDED = /^ *<(?:script type="module"|link rel="(?:modulepreload|stylesheet)") [^\n]*\n/gm;
  return {
    name: 'script-first',
    transformIndexHtml: {
      order: 'post',
      handler: (html) => {
        const added = (html.match(ADDED) ?? []).join('');
        return html
          .replace(ADDED, '')
          .replace(/^ *<meta charset[^\n]*\n/m, (charset) => charset + added);
      },
    },
  };
}
