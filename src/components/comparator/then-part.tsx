/** What a link showed when it was made: withdrawn figures first, then the answer of that version, or what has changed since. */
import type { ThenIndex, ThenVersion } from '../../build/versions/then.ts';
import type { ThenAndNow, Told } from '../../links/then.ts';
import type { Evidence } from '../../strength/types.ts';

interface Props {
  /** Evidence and model that the link names. */
  asked: { d: string | null; m: number | null };
  index: ThenIndex;
  /** Null where there was no such version. */
  told: Told<ThenVersion> | null;
  evidence: Pick<Evidence, 'version' | 'model'>;
  base: string;
}

/** What was never published is no fact: the link's word is shown as its word. */
function NotKnown({ asked: { d, m }, index: { versions } }: Pick<Props, 'asked' | 'index'>) {
  const version = versions.find((one) => one.version === d);
  return (
    <>
      <p><b>Not known:</b> what it showed.</p>
      <ul>
        {d === null ? <li>The link names no version of the evidence.</li> : !version && <li>No version of the evidence is called <code data-input>{d}</code>.</li>}
        {version && <li>Version <span data-id>{d}</span> was made with model <span data-id>{version.model}</span>, never with <code data-input>{m}</code>.</li>}
        {m !== null && !version && !versions.some(({ model }) => model === m) && <li>No version had the model <code data-input>{m}</code>.</li>}
      </ul>
    </>
  );
}

/** Numbers of a row, and its place on the page where that is to be said. */
const numbers = (row: ThenAndNow['was'], groups: ThenVersion['groups'] | null) => (row ? <><span data-id>1 in 20 below {row[2]}, half below {row[3]} kN</span>{groups && <><br /><small>{groups[row[1]] ?? row[1]}</small></>}</> : 'no number');

/** The answers side by side. */
function Rows({ rows, version: { names, groups, version } }: { rows: readonly ThenAndNow[]; version: ThenVersion }) {
  const moved = rows.filter(({ isMoved }) => isMoved);
  const nameOf = ({ method, name }: ThenAndNow): string => names[method] ?? name ?? method;
  return (
    <>
      <p>{moved.length === 0 ? 'Nothing that it showed for this rig has moved.' : <>Moved for this rig: {moved.map(nameOf).join('; ')}.</>}</p>
      <table>
        <caption>The attachment, without the device</caption>
        <thead><tr><th scope="col">Method</th><th scope="col">Then, <span data-id>{version}</span></th><th scope="col">Today</th></tr></thead>
        <tbody>{rows.map((row) => <tr key={row.method}><th scope="row">{nameOf(row)}</th><td>{numbers(row.was, groups)}</td><td>{row.isMoved ? numbers(row.now, row.was?.[1] === row.now?.[1] ? null : groups) : 'the same'}</td></tr>)}</tbody>
      </table>
    </>
  );
}

/** For a rig without a page of its own. */
function Inputs({ told: { inputs, isSlingChanged }, base }: { told: Told; base: string }) {
  return (
    <>
      <p>No page was built for this rig then, so what it showed is not kept. {inputs.length > 0 || isSlingChanged ? 'Of what its numbers are made from, this has changed since:' : 'None of the factors behind today’s numbers has changed since.'}</p>
      <ul>
        {isSlingChanged && <li>the record of the sling</li>}
        {inputs.map(({ method, name, factors }) => <li key={method}>{name}: {factors.map((factor, i) => <>{i > 0 && ', '}<a href={`${base}model/factors/#factor-${factor}`}>{factor.replaceAll('-', ' ')}</a></>)}</li>)}
      </ul>
    </>
  );
}

/** The whole part. */
export function ThenPart({ asked, index, told, evidence, base }: Props) {
  const today = <p>Above is today’s answer: evidence <span data-id>{evidence.version}</span>, model <span data-id>{evidence.model}</span>.</p>;
  if (!told) return <>{today}<NotKnown asked={asked} index={index} /></>;
  const { version: then, rows } = told;
  return (
    <>
      {then.withdrawn.map(({ id, on, why, methods }) => (
        <p key={id} class="note"><b>Withdrawn since:</b> <a href={`${base}figures/${id}/`}><span data-id>{id}</span></a>, on <time>{on}</time>. {why}{methods.length > 0 && <> It was behind: {methods.map((method) => then.names[method] ?? method).join('; ')}.</>}</p>
      ))}
      {today}
      <p>The link was made with evidence <a href={`${base}changes/${then.version}/`}><span data-id>{then.version}</span></a>, model <span data-id>{then.model}</span>{asked.m === null && ', the model of that version'}.</p>
      {then.models.map(({ version, says }) => <p key={version}>The model of <a href={`${base}changes/${version}/`}><span data-id>{version}</span></a> computes otherwise: {says}</p>)}
      {rows ? <Rows rows={rows} version={then} /> : <Inputs told={told} base={base} />}
      <p class="soft">To cite what it showed: Second Sling, evidence <span data-id>{then.version}</span>, model <span data-id>{then.model}</span>, frozen on <time>{then.day}</time>, file <code data-id>data/versions/{then.version}.json</code>, <span data-id>SHA-256</span> <code data-id>{then.sha256}</code>. The site as released then computes it again.</p>
    </>
  );
}
