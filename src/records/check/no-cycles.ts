import type { Position } from '../fault.ts';
import type { Rule } from './rule.ts';

interface Edge {
  to: string;
  at: Position;
}

export const noCycles: Rule = {
  name: 'no-cycles',
  description: 'No figure is, over its denominators and inputs, a fraction of itself; no factor multiplies itself.',
  check(report, { cells, factors, classes }) {
    const ofFigures = new Map<string, Edge[]>();
    for (const placed of cells.values()) {
      const edges: Edge[] = [];
      if (placed.figure.of?.includes('/')) edges.push({ to: placed.figure.of, at: placed.at('of') });
      for (const [name, to] of Object.entries(placed.figure.derived?.inputs ?? {}))
        edges.push({ to, at: placed.record.at(['derived', 'inputs', name]) });
      ofFigures.set(placed.figure.id, edges);
    }
    const ofFactors = new Map<string, Edge[]>();
    for (const record of factors.values()) {
      const { acts } = record.data;
      ofFactors.set(
        record.id,
        typeof acts === 'object' ? [{ to: acts.multiplies, at: record.at(['acts', 'multiplies']) }] : [],
      );
    }
    const ofClasses = new Map<string, Edge[]>();
    for (const record of classes.values()) {
      const { tau } = record.data;
      ofClasses.set(record.id, 'borrowed' in tau ? [{ to: tau.borrowed, at: record.at(['tau', 'borrowed']) }] : []);
    }
    for (const graph of [ofFigures, ofFactors, ofClasses]) {
      for (const { chain, at } of cyclesOf(graph)) {
        report({
          at,
          subject: chain[0] as string,
          problem: 'leads back to itself',
          got: chain.join(' < '),
          advice: 'Break the chain at the figure or factor that was measured on its own.',
        });
      }
    }
  },
};

/** Each cycle once, starting at its first id by alphabet. */
function cyclesOf(graph: Map<string, Edge[]>): { chain: string[]; at: Position }[] {
  const found = new Map<string, { chain: string[]; at: Position }>();
  const done = new Set<string>();
  const walk = (id: string, trail: string[]) => {
    const start = trail.indexOf(id);
    if (start >= 0) {
      const ring = trail.slice(start);
      const first = ring.indexOf([...ring].sort()[0] as string);
      const chain = [...ring.slice(first), ...ring.slice(0, first)];
      chain.push(chain[0] as string);
      const at = graph.get(chain[0] as string)?.find((edge) => edge.to === chain[1])?.at;
      if (at) found.set(chain.join(), { chain, at });
      return;
    }
    if (done.has(id)) return;
    for (const edge of graph.get(id) ?? []) walk(edge.to, [...trail, id]);
    done.add(id);
  };
  for (const id of [...graph.keys()].sort()) walk(id, []);
  return [...found.values()];
}
