/** Undo and redo. Taking back is an edit like another, with its own number, so that other copies hear of it too. */
import { type Write, writeFields, writesTo } from './register.ts';
import type { By, Register } from './types.ts';

/** One step: what it did in words, and what takes it back. */
export interface Step { label: string; back: readonly Write[] }

/** The register with the steps that can be taken back or done again, the newest last. */
export interface History { register: Register; undo: readonly Step[]; redo: readonly Step[] }

/** Steps that are kept; the oldest goes first. */
export const MOST_STEPS = 100;

/** A register with no steps behind it. */
export const startHistory = (register: Register): History => ({ register, undo: [], redo: [] });

const kept = (steps: readonly Step[]): readonly Step[] => steps.slice(-MOST_STEPS);

/** The history after an edit, an import or a merge. A register that is the same adds no step. */
export function recorded(history: History, next: Register, label: string): History {
  if (next === history.register) return history;
  const back = writesTo(next, history.register);
  return { register: next, undo: back.length > 0 ? kept([...history.undo, { label, back }]) : history.undo, redo: back.length > 0 ? [] : history.redo };
}

function moved(history: History, from: 'undo' | 'redo', to: 'undo' | 'redo', by: By): History | null {
  const step = history[from].at(-1);
  if (!step) return null;
  const register = writeFields(history.register, by, step.back);
  const rest = history[from].slice(0, -1);
  return { ...history, register, [from]: rest, [to]: kept([...history[to], { label: step.label, back: writesTo(register, history.register) }]) };
}

/** Takes the newest step back; null where there is none. */
export const undone = (history: History, by: By): History | null => moved(history, 'undo', 'redo', by);

/** Does the step again that was taken back last; null where there is none. */
export const redone = (history: History, by: By): History | null => moved(history, 'redo', 'undo', by);
