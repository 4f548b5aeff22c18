import js from '@eslint/js';
import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

export default tseslint.config(
  { ignores: ['dist', 'node_modules', 'target', 'test-results', 'playwright-report'] },
  js.configs.recommended,
  ...tseslint.configs.strict,
  {
    files: ['src/**/*.{ts,tsx}'],
    plugins: { 'react-hooks': reactHooks },
    rules: {
      'react-hooks/rules-of-hooks': 'error',
      'react-hooks/exhaustive-deps': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      eqeqeq: ['error', 'always'],
      'no-console': 'error',
    },
  },
  {
    // A *-state file decides; it neither draws nor fetches, so that its test needs no browser.
    files: ['src/**/*-state.ts'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            'react',
            'react-*',
            '@vaadin/*',
            '@tanstack/*',
            '**/*-view',
            '**/*-api',
            '**/http',
            '**/live-stream',
          ],
        },
      ],
      'no-restricted-globals': ['error', 'fetch', 'document', 'window', 'localStorage', 'EventSource'],
    },
  },
  {
    files: ['build.mjs'],
    languageOptions: {
      globals: {
        process: 'readonly',
        URL: 'readonly',
        setInterval: 'readonly',
        setTimeout: 'readonly',
        console: 'readonly',
        Buffer: 'readonly',
      },
    },
  },
);
