export * from './constants';
export * from './navy-resistance';
export * from './barge-resistance';
export * from './propeller-drag';
export * from './bollard-pull';
export * from './defaults';
export * from './duration';
export * from './tow-plan';
