/** A force of one record as it is printed: to ten newtons, about as fine as such cells are. */
export const forceNumberKn = (kn: number): string => kn.toFixed(2);
