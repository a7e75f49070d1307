import js from '@eslint/js';
import tseslint from 'typescript-eslint';

/** Names that only the arithmetic modules may import: everything else speaks quantities, cents and text. */
const decimalOnly = {
  paths: [{ name: 'decimal.js', message: 'Decimal lives in core/units, core/money and core/sheet only.' }],
};

export default tseslint.config(
  {
    ignores: [
      'dist/**',
      'node_modules/**',
      'coverage/**',
      'demo/out/**',
      'test/e2e/out/**',
      '*.config.*',
      '**/*.mjs',
      'reports/**',
    ],
  },
  js.configs.recommended,
  ...tseslint.configs.strictTypeChecked,
  {
    languageOptions: {
      parserOptions: {
        project: [
          'core/tsconfig.json',
          'electron/tsconfig.json',
          'renderer/tsconfig.json',
          'test/tsconfig.json',
        ],
        tsconfigRootDir: import.meta.dirname,
      },
    },
    rules: {
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      'no-undef': 'off',
      'no-empty': ['error', { allowEmptyCatch: false }],
    },
  },
  {
    files: ['core/**/*.ts', 'renderer/**/*.ts', 'renderer/**/*.tsx'],
    rules: { 'no-restricted-imports': ['error', decimalOnly] },
  },
  {
    files: ['core/units/**/*.ts', 'core/money/**/*.ts', 'core/sheet/**/*.ts'],
    rules: { 'no-restricted-imports': 'off' },
  },
  {
    files: ['core/**/*.ts'],
    rules: {
      'no-restricted-globals': ['error', 'Date', 'window', 'document', 'process'],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random' }],
    },
  },
  { files: ['core/calendar/**/*.ts'], rules: { 'no-restricted-globals': 'off' } },
);
