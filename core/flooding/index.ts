export type * from './upright/types';
