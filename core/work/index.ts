export * from './schema';
export * from './library';
