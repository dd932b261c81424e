import js from '@eslint/js';
import tseslint from 'typescript-eslint';

const pureMessage =
  'shared/ is pure: no framework, no files, no clock. Pass the data in from src/ instead.';

export default tseslint.config(
  { ignores: ['dist', 'node_modules', 'data', 'coverage', 'test-output'] },
  js.configs.recommended,
  {
    files: ['**/*.{ts,tsx}'],
    extends: [tseslint.configs.recommended],
    rules: {
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_', ignoreRestSiblings: true },
      ],
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/consistent-type-imports': 'off',
      'no-console': 'error',
      eqeqeq: 'error',
    },
  },
  {
    // The arrow rule: src → shared → nothing.
    files: ['shared/**/*.ts'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              group: [
                '@nestjs/*',
                'typeorm',
                'class-*',
                'react',
                'react-*',
                '@mantine/*',
                'express',
                'node:*',
                'fs',
                'path',
              ],
              message: pureMessage,
            },
            { group: ['**/src/**', '**/test/**', '**/seeds/**'], message: pureMessage },
          ],
        },
      ],
      'no-restricted-globals': [
        'error',
        { name: 'process', message: pureMessage },
        { name: 'fetch', message: pureMessage },
        { name: 'window', message: pureMessage },
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Date', property: 'now', message: pureMessage },
        { object: 'Math', property: 'random', message: pureMessage },
        { object: 'DateTime', property: 'now', message: pureMessage },
        { object: 'DateTime', property: 'local', message: pureMessage },
      ],
      'no-restricted-syntax': [
        'error',
        { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: pureMessage },
      ],
    },
  },
  {
    files: ['src/web/**/*.{ts,tsx}'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              group: ['@nestjs/*', 'typeorm', 'node:*'],
              message: 'The page runs in a browser: ask the API, or use shared/.',
            },
          ],
        },
      ],
    },
  },
  {
    files: ['src/web/vite.config.ts'],
    rules: { 'no-restricted-imports': 'off' },
  },
  {
    files: ['src/main.ts', 'src/cli/**/*.ts', '**/*.mjs', 'test/**/*.ts'],
    languageOptions: {
      globals: {
        process: 'readonly',
        console: 'readonly',
        URL: 'readonly',
        setTimeout: 'readonly',
        performance: 'readonly',
        fetch: 'readonly',
        Buffer: 'readonly',
      },
    },
    rules: { 'no-console': 'off' },
  },
);
