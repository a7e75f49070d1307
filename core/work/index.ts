export { chosenItems, itemRelationships, type Choices, type ItemRelationship } from './chosen-items';
export * from './library';
export { presentDrivers, type ShipKind } from './present-drivers';
export * from './schema';
