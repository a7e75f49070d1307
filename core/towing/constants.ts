/** Exact conversion factors. @source NIST SP 811, 2008, appendix B. */
export const KNOT = 1852 / 3600;
