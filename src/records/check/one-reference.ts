import type { Rule } from './rule.ts';

export const oneReference: Rule = {
  name: 'one-reference',
  description: "Exactly one method is the reference: the maker's own sling, outside every ranking.",
  check(report, { methods, present }) {
    // A method that could not be read may be the one; its own faults are told.
    if (methods.size === 0 || methods.size < present.methods.size) return;
    const references = [...methods.values()].filter((record) => record.data.role === 'reference');
    if (references.length === 0) {
      const [any] = methods.values();
      if (any)
        report({
          at: any.at(['role']),
          subject: any.id,
          problem: 'no method has the role reference',
          got: any.data.role,
          advice: "Write role: reference in the record of the maker's own sling.",
        });
    }
    for (const record of references.slice(1)) {
      report({
        at: record.at(['role']),
        subject: record.id,
        problem: `is a second reference beside ${references[0]?.id}`,
        got: record.data.role,
        advice: "Keep the role reference for the maker's own sling.",
      });
    }
  },
};
