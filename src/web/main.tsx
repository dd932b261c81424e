import './look/components.js';
import 'virtual:library-variables.css';
import './look/tokens.css';
import './look/font.css';
import './look/base.css';
import { MantineProvider } from '@mantine/core';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { startOutbox } from './api/outbox.js';
import { App, askAhead } from './app.js';
import { startWorker } from './kept/worker.js';
import { theme } from './look/theme.js';

const queries = new QueryClient({
  defaultOptions: {
    // Without signal too it is asked: what was read before is the answer then.
    queries: { retry: 1, refetchOnWindowFocus: false, networkMode: 'always' },
    mutations: { networkMode: 'always' },
  },
});

startOutbox(queries);
startWorker();
askAhead(queries, window.location.pathname);
createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <MantineProvider theme={theme} withCssVariables={false} defaultColorScheme="auto">
      <QueryClientProvider client={queries}>
        <App />
      </QueryClientProvider>
    </MantineProvider>
  </StrictMode>,
);
