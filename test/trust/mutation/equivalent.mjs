/**
 * Changes that change nothing anybody could see, each with the reason: file, the line as it stands, what takes the
 * place, why it is the same. A change listed here that is seen all the same is told as one too many.
 */
export const EQUIVALENT = [];
