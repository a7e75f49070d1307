export { ELEMENTS, ELEMENT_TITLES, type ElementKey } from '../evaluation';
