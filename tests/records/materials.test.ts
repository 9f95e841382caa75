/** Every material of the rack has a page that speaks of all topics. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { readAll } from '../../src/records/read.ts';
import { TOPICS } from '../../src/records/schema.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const { materials, cells } = readAll(ROOT);

test('the six materials of a rack are there, each with its own place', () => {
  expect([...materials.values()].sort((a, b) => a.data.order - b.data.order).map(({ id }) => id)).toEqual(['nylon', 'polyester', 'hmpe', 'aramid', 'wire', 'metal-links']);
});

describe.each([...materials])('%s', (id, { data }) => {
  const prose = readFileSync(`${ROOT}/content/materials/${id}.mdx`, 'utf8');

  test('shows each topic once', () => {
    const shown = [...prose.matchAll(/<Topic material="([a-z-]+)" topic="([a-z]+)" \/>/g)];
    expect(shown.map(([, material]) => material)).toEqual(Array<string>(TOPICS.length).fill(id));
    expect(shown.map(([, , topic]) => topic).sort()).toEqual([...TOPICS].sort());
  });

  test('ends with what to do and what we do not know', () => {
    expect([...prose.matchAll(/^## (.*)$/gm)].slice(-2).map(([, title]) => title)).toEqual(['What to do', 'What we do not know']);
  });

  test('shows no figure twice under one topic, and none that is invented', () => {
    for (const topic of TOPICS) {
      const { figures } = data.topics[topic];
      expect(new Set(figures).size, topic).toBe(figures.length);
      expect(figures.filter((address) => cells.get(address)?.figure.standing === 'invented'), topic).toEqual([]);
    }
  });
});
