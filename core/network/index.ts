export type {
  ActivityTimes,
  Network,
  NetworkActivity,
  NetworkHammock,
  NetworkRelationship,
  RelationshipKind,
} from './model';
export { networkTimes, type NetworkResult } from './network-times';
