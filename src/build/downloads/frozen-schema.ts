/** JSON Schema of a frozen version of the evidence. It holds for every version, so it asks for what all of them have. */
import { MATERIALS, STANDINGS } from '../../records/schema.ts';
import type { JsonSchema } from './json-schema.ts';

const text = (description: string): JsonSchema => ({ type: 'string', description });
const record = (description: string, of: JsonSchema): JsonSchema => ({ type: 'object', description, additionalProperties: of });
const object = (description: string, properties: Record<string, JsonSchema>, required: readonly string[]): JsonSchema => ({ type: 'object', description, properties, required });

/** Low, middle and high as shown: forces in kN with one digit. */
const SPREAD: JsonSchema = {
  description: 'Low, middle and high end of the interval as shown, kN. Null: no number is given.',
  anyOf: [{ type: 'null' }, { type: 'array', items: { type: 'string', pattern: '^\\d+\\.\\d$' }, minItems: 3, maxItems: 3 }],
};

const FIGURE = object('One figure as the engine read it.', {
  id: text('Its address below /figures/.'), source: text('Id of its source.'), what: text('What it is.'),
  kind: { enum: ['measured', 'required', 'rule', 'constant', 'assumed'] },
  value: { description: 'The value as the record writes it.', type: ['number', 'object'] },
  unit: text('Unit of the value.'), of: text('What a ratio is a share of.'),
  rig: { type: 'object', description: 'Conditions.' }, study: text('Laboratory or work that it counts as.'), standing: { enum: [...STANDINGS], description: 'How we know it.' },
  certainty: { type: ['string', 'null'], description: 'How sure it is; null for what nobody measured.' },
  seen: { type: ['object', 'null'], description: 'What it says of a mean and a scatter, on the scale of the natural logarithm; null where it may not feed.' },
}, ['id', 'source', 'what', 'kind', 'rig', 'study', 'standing', 'certainty', 'seen']);

const ANSWER = object('One way of attaching the sling, as shown.', {
  method: text('Id of the method.'), state: { enum: ['result', 'apart', 'no-data', 'other-sling'] }, group: text('Where it stands on the page.'),
  attachment: SPREAD, rig: SPREAD,
}, ['method', 'state', 'group', 'attachment', 'rig']);

/** The schema. What a record of a factor, method or gap looks like has changed between versions and stays open. */
export const frozenSchema = (): JsonSchema => ({
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'A frozen version of the evidence',
  description: 'What the engine read, and the answers of the prebuilt comparisons as they were shown.',
  ...object('', {
    evidence: object('What the engine read.', {
      version: { type: 'string', pattern: '^\\d{4}-\\d{2}-\\d{2}\\.\\d+$', description: 'Day and number of the version.' },
      model: { type: 'integer', minimum: 1, description: 'Number of the model.' },
      figures: record('Figures by id: those that a factor, a method, a gap or a rule names.', FIGURE),
      factors: record('Factors by id.', object('', { what: text('What it is.'), class: text('Class of scatter.'), from: { type: 'array', items: { type: 'string' }, description: 'Figures that feed it.' } }, ['what', 'acts', 'class', 'applies', 'from'])),
      classes: record('Scatter and spread of each class.', object('', {
        cv: { type: 'number', minimum: 0, description: 'Coefficient of variation within a study, as a share of one.' }, tau: { type: 'number', minimum: 0, description: 'Spread between studies: standard deviation of the natural logarithm.' },
        tauFrom: { enum: ['estimated', 'borrowed', 'assumed'] },
      }, ['cv', 'cvDf', 'cvInterval', 'ceiling', 'tau', 'tauInterval', 'tauFrom'])),
      methods: record('Ways of attaching a sling.', object('', { name: text('Its name.'), role: text('Whose way it is.') }, ['name', 'order', 'role', 'summary', 'takes', 'eyes', 'links'])),
      slings: record('Slings that a reader may have.', object('', { name: text('Its name.'), material: { enum: [...MATERIALS] } }, ['name', 'order', 'form', 'material', 'widthMm', 'lengthsCm'])),
      gaps: record('Cells that are left empty, and the nearest figures.', object('', {}, ['blocks', 'nearest'])),
      rules: record('Rules of retirement that the comparison reads. The first version has none.', object('', {}, ['order', 'verdict', 'when', 'says', 'figures', 'years'])),
    }, ['version', 'model', 'figures', 'factors', 'classes', 'methods', 'slings', 'gaps']),
    answers: { type: 'object', description: 'Answers by path: rating in kN, eye, sling.', patternProperties: { '^\\d+(\\.\\d+)?/[a-z-]+/[a-z0-9-]+$': { type: 'array', items: ANSWER } }, additionalProperties: false },
    gone: { type: 'object', description: 'Figures that had moved or been withdrawn. The first version has no such list.' },
  }, ['evidence', 'answers']),
  additionalProperties: false,
});
