import './look/components.js';
import 'virtual:library-variables.css';
import './look/tokens.css';
import './look/font.css';
import './look/base.css';
import { MantineProvider } from '@mantine/core';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { flushSync } from 'react-dom';
import { createRoot } from 'react-dom/client';
import { startOutbox } from './api/outbox.js';
import { App, askAhead } from './app.js';
import { drawn } from './kept/drawn.js';
import { startWorker } from './kept/worker.js';
import { theme } from './look/theme.js';

const queries = new QueryClient({
  defaultOptions: {
    // Without signal too it is asked: what was read before is the answer then.
    queries: { retry: 1, refetchOnWindowFocus: false, networkMode: 'always' },
    mutations: { networkMode: 'always' },
  },
});

/** A page that is hidden draws nothing; what was told is sent all the same, ms. */
const DRAWN_MS = 1000;

/** Nobody waits longer than this before a page says that it waits, ms. */
const AWAITED_MS = 200;

startWorker();
const asked = askAhead(queries, window.location.pathname);
const root = createRoot(document.getElementById('root')!);
const draw = (): void =>
  root.render(
    <StrictMode>
      <MantineProvider theme={theme} withCssVariables={false} defaultColorScheme="auto">
        <QueryClientProvider client={queries}>
          <App />
        </QueryClientProvider>
      </MantineProvider>
    </StrictMode>,
  );
/**
 * What was asked for with the page is mostly there before its script: drawn once, it is shown sooner than
 * where a page without it is drawn first.
 */
async function open(): Promise<void> {
  if (asked) await Promise.race([asked, new Promise((done) => setTimeout(done, AWAITED_MS))]);
  // All at once: between two steps a browser puts its own work, such as keeping the script as compiled.
  flushSync(draw);
  await drawn(DRAWN_MS);
  startOutbox(queries);
}
void open();
