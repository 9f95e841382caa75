import { hasProse } from './has-prose.ts';

export const methodHasProse = hasProse('method-has-prose', 'Every method has a page of prose.', 'methods', ({ methods }) => methods);
