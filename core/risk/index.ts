export * from './distributions';
