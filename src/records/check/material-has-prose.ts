import { hasProse } from './has-prose.ts';

export const materialHasProse = hasProse('material-has-prose', 'Every material has a page of prose.', 'materials', ({ materials }) => materials);
