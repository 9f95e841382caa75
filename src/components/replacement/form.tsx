/**
 * The questions of the calculator of costs, drawn once when the page is built. The script reads and writes the fields by
 * their names: `count-0`, `maker-price`, `week`.
 */
import { MOST_KINDS, type OfferField, type Way, WAYS } from '../../replacement/read-words.ts';
import { WAY_NAMES } from './words.ts';

/** Something to write, with its unit and room for what is wrong with it. */
function Written({ name, label, unit, hint, isText = false }: { name: string; label: string; unit?: string; hint?: string; isText?: boolean }) {
  return (
    <div class="written">
      <label for={`in-${name}`}>{label}</label>
      <span class="entry"><input id={`in-${name}`} name={name} type="text" placeholder=" " inputMode={isText ? undefined : 'decimal'} aria-describedby={`says-${name}`} />{unit && ` ${unit}`}</span>
      {hint && <p class="soft small">{hint}</p>}
      <p id={`says-${name}`} class="fault" data-input></p>
    </div>
  );
}

/** One kind of device. The first stands open; the others come when asked for. */
function KindFields({ at }: { at: number }) {
  return (
    <fieldset class="kind" id={`kind-${at}`} hidden={at > 0}>
      <legend data-input>{at === 0 ? 'The devices' : `Kind ${at + 1}`}</legend>
      <div class="row">
        <Written name={`count-${at}`} label="How many" />
        <Written name={`name-${at}`} label="What they are" isText />
        <Written name={`fresh-${at}`} label="A new one costs" hint="Only where it differs from “Buy new” below." />
      </div>
      <div class="refusals">
        <label class="chip"><input type="checkbox" name={`m-${at}`} />the maker refused</label>
        <label class="chip"><input type="checkbox" name={`w-${at}`} />a workshop refused</label>
      </div>
      {at > 0 && <p><button type="button" name="remove" value={at}>Take this kind out</button></p>}
    </fieldset>
  );
}

const STEPS = [['from', 'lower'], ['from2', 'lower2']] as const satisfies readonly (readonly [OfferField, OfferField])[];
const PRICE_LABELS: Readonly<Record<Way, string>> = {
  maker: 'New sling, each', workshop: 'New sling, each', new: 'New device, each', home: 'Sewn sling, each',
};
const LIFE_LABELS: Readonly<Record<Way, string>> = {
  maker: 'The sling then lasts', workshop: 'The sling then lasts', new: 'The device then lasts', home: 'The sling then lasts',
};

/** One way, with its price, its post and its weeks; lower prices for many are closed. */
function WayFields({ way }: { way: Way }) {
  const isSent = way === 'maker' || way === 'workshop';
  return (
    <details class="group" id={`way-${way}`} open={way === 'maker' || way === 'workshop' || way === 'new'}>
      <summary><b>{WAY_NAMES[way]}</b> <span class="state" data-input></span></summary>
      {way === 'home' && <p class="only" id="home-closed">Only for devices that maker and workshop have both refused. Tick both above, and it opens.</p>}
      <div class="row" id={`fields-${way}`}>
        <Written name={`${way}-price`} label={PRICE_LABELS[way]} />
        {isSent && <Written name={`${way}-there`} label="Post there, in all" />}
        <Written name={`${way}-back`} label={isSent ? 'Post back, in all' : 'Delivery, in all'} />
        <Written name={`${way}-weeks`} label={isSent ? 'Weeks away' : 'Weeks until it is there'} />
        <Written name={`${way}-life`} label={LIFE_LABELS[way]} unit="years" />
      </div>
      <details class="more">
        <summary>Least charge, and lower prices for many</summary>
        <div class="row">
          <Written name={`${way}-least`} label="Charged for at least" unit="devices" />
          {STEPS.map(([from, lower], i) => (
            <div key={from} class="step">
              <Written name={`${way}-${from}`} label={i === 0 ? 'From so many on' : 'And from so many on'} />
              <Written name={`${way}-${lower}`} label="each costs" />
            </div>
          ))}
        </div>
      </details>
    </details>
  );
}

/** The form. */
export function CostForm() {
  return (
    <form class="questions needs-script" autoComplete="off">
      <section aria-labelledby="q-devices">
        <h2 id="q-devices">What you have</h2>
        {Array.from({ length: MOST_KINDS }, (_, at) => <KindFields key={at} at={at} />)}
        <p><button type="button" name="more">Another kind of device</button> <button type="button" name="example">Try the invented example</button></p>
        <div class="row">
          <Written name="cur" label="Currency" isText hint="A code such as EUR, a sign, or nothing." />
          <Written name="week" label="A week without one costs" hint="Per device: what you hire or miss. Nothing, if nothing." />
          <Written name="metal" label="The metal lasts another" unit="years" hint="By its maker’s limit, or your own judgement." />
          <Written name="rate" label="Interest a year" unit="%" hint="Only for the cost a year. May stay open." />
        </div>
      </section>
      <section aria-labelledby="q-ways">
        <h2 id="q-ways">What you were offered</h2>
        {WAYS.map((way) => <WayFields key={way} way={way} />)}
        <p class="to-answer"><button type="submit">To the answer</button></p>
      </section>
    </form>
  );
}
