import { namedIn } from '../compared.ts';
import { FORCE_UNITS } from '../units.ts';
import type { Path } from '../yaml.ts';
import type { Rule } from './rule.ts';

export const classGroupsCompareLike: Rule = {
  name: 'class-groups-compare-like',
  description:
    'A group from which a class takes its spread between studies compares like with like: forces with forces or shares with shares, and each share from another study.',
  check(report, { classes, cells }) {
    for (const record of classes.values()) {
      const { tau } = record.data;
      if (!('groups' in tau)) continue;
      for (const [g, group] of tau.groups.entries()) {
        const shares = group.filter((each) => typeof each !== 'string');
        const at = (path: Path) => record.at(['tau', 'groups', g, ...path]);
        const subject = `class/${record.id}`;
        if (shares.length > 0 && shares.length < group.length) {
          report({ at: at([]), subject, problem: 'a group sets forces beside shares of a force', got: `${shares.length} of ${group.length} are shares`, advice: 'Give every entry an over, or none.' });
        }
        const studies = shares.map(({ figure }) => cells.get(figure)?.figure.study);
        studies.forEach((study, i) => {
          if (study !== undefined && studies.indexOf(study) < i) {
            report({ at: at([group.indexOf(shares[i] as (typeof shares)[number])]), subject, problem: 'two shares of one group come from one study', got: study, advice: 'Keep one of them: a study cannot differ from itself.' });
          }
        });
        const kind = (address: string): 'force' | 'share' | undefined => {
          const unit = cells.get(address)?.figure.unit;
          return unit === undefined ? undefined : FORCE_UNITS.has(unit) ? 'force' : 'share';
        };
        const named = namedIn(group);
        const first = named.map(({ address }) => kind(address)).find((one) => one !== undefined);
        for (const { address, path } of named) {
          const own = kind(address);
          if (own === undefined || own === first) continue;
          report({ at: at(path), subject, problem: `${address} is a ${own} in a group that begins with a ${first}`, got: cells.get(address)?.figure.unit ?? '', advice: 'Compare forces with forces; a printed share stands in a group of its own.' });
        }
      }
    }
  },
};
