import '@mantine/core/styles.css';
import './style.css';
import { createTheme, MantineProvider, type MantineColorsTuple } from '@mantine/core';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.js';

const moss: MantineColorsTuple = [
  '#eef6f2',
  '#dce9e3',
  '#b5d2c6',
  '#8bbaa8',
  '#68a68e',
  '#529a7e',
  '#459475',
  '#35705a',
  '#2f5d50',
  '#1d4538',
];

const theme = createTheme({
  colors: { moss },
  primaryColor: 'moss',
  primaryShade: 8,
  defaultRadius: 'md',
  autoContrast: true,
  fontFamily: 'system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", sans-serif',
  components: {
    // Large targets: this is used with gloves on.
    Button: { defaultProps: { size: 'md' } },
    TextInput: { defaultProps: { size: 'md' } },
    NumberInput: { defaultProps: { size: 'md' } },
    NativeSelect: { defaultProps: { size: 'md' } },
    ActionIcon: { defaultProps: { size: 44, variant: 'subtle' } },
  },
});

const queries = new QueryClient({
  defaultOptions: { queries: { retry: 1, refetchOnWindowFocus: false } },
});

createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <MantineProvider theme={theme} defaultColorScheme="auto">
      <QueryClientProvider client={queries}>
        <App />
      </QueryClientProvider>
    </MantineProvider>
  </StrictMode>,
);
