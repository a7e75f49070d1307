export * from './size-numbers';
export * from './steel-weight';
export * from './wetted-surface';
export * from './plate-area';
export * from './shell-thickness';
export * from './cutting';
export * from './material-shares';
