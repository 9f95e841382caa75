/** Works to cite, made up for tests: their words are as odd as a title may be. */
import fc from 'fast-check';
import type { Author, Work } from '../../../src/citing/citable.ts';

/** Marks that formats give a meaning of their own, beside letters of several scripts. */
const ODD = [...'{}\\&%$#_^~"\'`<>@=,;:-–—/|?!*()[]', 'é', 'ß', 'Ž', 'ñ', 'Ω', '結', '𝛼', '’', '“', '”', ' and ', 'ER  - ', 'TY  - ', '\n', '\t', '\u2028', '--', '---', "''", '``', '\\LaTeX', '{\\"o}', '$x^2$', 'https://example.org/?a=1&b=%7B#c'];

/** Words with such marks between them; never empty. */
export const oddText: fc.Arbitrary<string> = fc
  .array(fc.oneof(fc.constantFrom('Sling', 'knot', 'strength of', '10 mm', 'a'), fc.constantFrom(...ODD)), { maxLength: 12 })
  .map((pieces) => `T${pieces.join('')}x`);

const name = fc.constantFrom('Harmston', 'van der Berg', 'O’Neill', 'Müller-Lüdenscheidt', 'Żak');
const author: fc.Arbitrary<Author> = fc.oneof(
  fc.record({ family: name, given: fc.constantFrom('C.', 'J. M.', 'Karen', 'J.-P.') }),
  fc.record({ literal: fc.constantFrom('Second Sling contributors', 'Web Sling & Tie Down Association', 'Ropes and Knots Club', 'Club {north}', '100 % Slings') }),
);
const two = (most: number) => fc.integer({ min: 1, max: most }).map((n) => String(n).padStart(2, '0'));
export const day: fc.Arbitrary<string> = fc.tuple(fc.integer({ min: 1900, max: 2099 }), two(12), two(28)).map((parts) => parts.join('-'));

/** A report of ours under an odd title. */
export const report: fc.Arbitrary<Work> = fc.record({
  key: fc.constant('second-sling-figure-a'), type: fc.constant('report' as const), title: oddText, authors: fc.array(author, { minLength: 1, maxLength: 4 }), issued: day,
  publisher: fc.constant('Second Sling'), genre: fc.constant('Figure'), number: fc.constant('lab_a/10%-knot#b'), version: fc.constant('2026-11-25.4'),
  url: fc.constant('http://localhost:4321/compare/?v=1&rating=12&d=2026-11-25.4#row_1'), language: fc.constant('en'),
  licence: fc.constant({ name: 'CC-BY-4.0', url: 'https://creativecommons.org/licenses/by/4.0/' }), accessed: day,
});
