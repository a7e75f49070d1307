export * from './rows';
export * from './window-rows';
