/** A force of one record as it is printed: to ten newtons, about as fine as such cells are. */
export const forceNumberKn = (kn: number): string => (Math.abs(kn) < 0.005 ? 0 : kn).toFixed(2);
