import { isDeepStrictEqual } from 'node:util';
import { namedIn } from '../compared.ts';
import type { Position } from '../fault.ts';
import type { Rule } from './rule.ts';

export const oneNumberOnce: Rule = {
  name: 'one-number-once',
  description:
    'A number feeds a factor or a class once: not twice by its address, and not from two sources that print one study.',
  check(report, { factors, classes, cells }) {
    const lists: { id: string; from: readonly string[]; at: (i: number) => Position }[] = [];
    for (const record of factors.values())
      lists.push({ id: record.id, from: record.data.from, at: (i) => record.at(['from', i]) });
    for (const record of classes.values()) {
      const { cv, tau } = record.data;
      if ('from' in cv)
        lists.push({ id: `class/${record.id}`, from: cv.from, at: (i) => record.at(['cv', 'from', i]) });
      if (!('groups' in tau)) continue;
      for (const [g, group] of tau.groups.entries()) {
        const named = namedIn(group);
        lists.push({ id: `class/${record.id}`, from: named.map(({ address }) => address), at: (i) => record.at(['tau', 'groups', g, ...(named[i]?.path ?? [])]) });
      }
    }
    for (const { id, from, at } of lists) {
      from.forEach((address, i) => {
        if (from.indexOf(address) < i) {
          report({
            at: at(i),
            subject: id,
            problem: 'a figure stands twice in one list',
            got: address,
            advice: 'Remove one of them.',
          });
          return;
        }
        const figure = cells.get(address)?.figure;
        if (figure?.value === undefined) return;
        const twin = from
          .slice(0, i)
          .map((a) => cells.get(a)?.figure)
          .find(
            (other) =>
              other &&
              other.source !== figure.source &&
              other.study === figure.study &&
              other.unit === figure.unit &&
              isDeepStrictEqual(other.value, figure.value),
          );
        if (twin) {
          report({
            at: at(i),
            subject: id,
            problem: `${address} is the same number of the study ${figure.study} as ${twin.id}, printed in another source`,
            got: JSON.stringify(figure.value),
            advice: 'Keep the one nearest to the laboratory and leave the other out with this reason.',
          });
        }
      });
    }
  },
};
