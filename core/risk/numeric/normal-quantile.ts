const CENTRE = [
  3.3871328727963665, 1.3314166789178438e2, 1.9715909503065513e3, 1.373169376550946e4, 4.592195393154987e4,
  6.72657709270087e4, 3.343057558358813e4, 2.5090809287301227e3, 4.231333070160091e1, 6.871870074920579e2,
  5.394196021424751e3, 2.1213794301586597e4, 3.930789580009271e4, 2.8729085735721943e4, 5.226495278852854e3,
] as const;
const TAIL = [
  1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
  2.417807251774506e-1, 2.2723844989269184e-2, 7.745450142783414e-4, 2.053191626637759, 1.6763848301838038,
  6.897673349851e-1, 1.4810397642748008e-1, 1.5198666563616457e-2, 5.475938084995345e-4,
  1.0507500716444169e-9,
] as const;
const FAR_TAIL = [
  6.657904643501103, 5.463784911164114, 1.7848265399172913, 2.9656057182850487e-1, 2.6532189526576124e-2,
  1.2426609473880784e-3, 2.7115555687434876e-5, 2.0103343992922881e-7, 5.99832206555888e-1,
  1.369298809227358e-1, 1.4875361290850615e-2, 7.868691311456133e-4, 1.8463183175100548e-5,
  1.421511758316446e-7, 2.0442631033899397e-15,
] as const;

/**
 * The standard normal value that a share `p` of outcomes does not exceed; about 16 figures.
 * @source M. J. Wichura, Algorithm AS 241, Applied Statistics 37 (1988) 477-484, PPND16.
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(CENTRE, 0.180625 - q * q);
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  const size = r <= 5 ? ratio(TAIL, r - 1.6) : ratio(FAR_TAIL, r - 5);
  if (r === Infinity) return q < 0 ? -Infinity : Infinity;
  return q < 0 ? -size : size;
}

type Coefficients = typeof CENTRE | typeof TAIL | typeof FAR_TAIL;

/** A quotient of two polynomials of degree seven; the lower one begins with 1. */
function ratio(c: Coefficients, x: number): number {
  const upper = ((((((c[7] * x + c[6]) * x + c[5]) * x + c[4]) * x + c[3]) * x + c[2]) * x + c[1]) * x + c[0];
  const lower =
    ((((((c[14] * x + c[13]) * x + c[12]) * x + c[11]) * x + c[10]) * x + c[9]) * x + c[8]) * x + 1;
  return upper / lower;
}
