/** The drawings of a row, as the comparison has them. */
import type { Row } from '../../strength/types.ts';
import { lane, strip } from '../comparator/lane.tsx';
import type { Frame } from '../comparator/setup.ts';

/** Dots at their force, and what goes first in each. */
export const RowDrawing = ({ row, frame }: { row: Row; frame: Frame }) => <>{lane(row, frame)}{row.strip && strip(row.strip)}</>;
