/** Exact conversion factors. @source NIST SP 811, 2008, appendix B. */
export const POUND = 0.45359237;
export const KNOT = 1852 / 3600;
export const SQUARE_FOOT = 0.3048 ** 2;
