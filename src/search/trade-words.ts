/**
 * Words of the trade by which readers ask for what the site names otherwise. Common practice: no source stands behind a
 * word. Generic words alone, never the name of a product or of one maker's fibre. The other names of terms
 * (`also` in `content/terms/`) come on top of these.
 */

/** What the site calls a thing, and what readers call it as well. */
export const TRADE_WORDS: readonly (readonly [called: string, ...also: string[]])[] = [
  ['girth hitch', 'cow hitch', 'strop hitch', 'choker', 'choke hitch', 'ring hitch'],
  ['ring bend', 'tape bend', 'overhand follow-through', 'rewoven overhand'],
  ["double fisherman's", 'grapevine knot', 'grapevine bend'],
  ['figure eight', 'figure of eight', 'flemish loop'],
  ['overhand on a bight', 'overhand loop'],
  ['overhand bend', 'offset overhand', 'flat overhand', 'flat bend'],
  ['HMPE', 'UHMWPE', 'UHMPE', 'HPPE', 'ultra-high-molecular-weight polyethylene', 'polyethylene', 'polythene'],
  ['nylon', 'PA', 'PA6'],
  ['polyester', 'PES', 'PET'],
  ['aramid', 'para-aramid', 'p-aramid'],
  ['camming device', 'cam', 'SLCD', 'spring-loaded camming device', 'active protection'],
  ['chock', 'wired chock', 'nut on wire', 'passive protection'],
  ['connector', 'karabiner', 'krab', 'biner', 'snaplink'],
  ['quick link', 'screw link', 'maillon'],
  ['sling', 'runner', 'strop'],
  ['tape', 'ribbon', 'tubular', 'strap'],
  ['cord', 'cordelette'],
  ['ferrule', 'swage', 'swaging', 'crimp', 'copper sleeve'],
  ['wire', 'cable', 'wire rope'],
  ['stitching', 'sewing', 'sewn', 'thread'],
  ['replace', 'replacement', 'replacing', 're-sling', 'reslinging', 'repair', 'refurbish', 're-web'],
  ['retire', 'throw away', 'discard', 'expire', 'expiry', 'shelf life', 'lifespan', 'service life', 'how old', 'too old', 'old sling', 'sling is old', 'out of date'],
  ['light', 'UV', 'ultraviolet', 'sunlight', 'sun'],
  ['chemicals', 'acid', 'battery', 'solvent', 'bleach'],
  ['breaking force', 'breaking strength', 'tensile strength', 'ultimate strength', 'failure load'],
  ['minimum breaking strength', 'MBL', 'minimum breaking load'],
  ['working load', 'WLL', 'SWL', 'rated capacity'],
  ['standard deviation', 'sigma'],
  ['mean', 'average'],
  ['cv', 'CoV', 'scatter'],
  ['tolerance bound', 'lower bound', 'confidence bound'],
  ['pull test', 'tensile test', 'pull tester', 'test bench'],
  ['load cell', 'dynamometer'],
  ['fall', 'whipper'],
  ['belay', 'belayer', 'belaying'],
  ['rack', 'gear list', 'inventory'],
  ['cost', 'price', 'how much'],
  ['law', 'legal', 'liability', 'allowed'],
  ['workshop', 'repairer', 'repair shop'],
  ['maker', 'producer'],
  ['protective layer', 'sheath on the sling', 'wear layer', 'chafe sleeve'],
  ['ppe', 'safety equipment'],
  ['one-in-twenty low value', '1 in 20', '5th percentile', 'fifth percentile', '5 % fractile'],
  ['fuzz', 'fray', 'frayed', 'furry', 'abrasion', 'abraded'],
  ['big fall', 'hard fall'],
  ['inspect', 'check', 'look over'],
  ['caution', 'warning', 'danger', 'dangerous', 'risk', 'safe', 'unsafe'],
  ['data', 'download', 'spreadsheet', 'csv file', 'open data'],
  ['cite', 'citation', 'reference', 'bibliography'],
];

/** American and other spellings beside the one that the site uses. */
export const SPELLINGS: readonly (readonly [ours: string, ...others: string[]])[] = [
  ['fibre', 'fiber'], ['aluminium', 'aluminum'], ['colour', 'color'], ['centre', 'center'], ['metre', 'meter'], ['millimetre', 'millimeter'],
  ['grey', 'gray'], ['mould', 'mold'], ['catalogue', 'catalog'], ['analyse', 'analyze'], ['licence', 'license'], ['carabiner', 'karabiner'],
  ['behaviour', 'behavior'], ['vapour', 'vapor'], ['abseil', 'rappel'], ['sulphur', 'sulfur'], ['practise', 'practice'],
];

/** Units as the site writes them, in small letters, and what readers write for them. A pound or a kilogram of force is one of force. */
export const UNIT_WORDS: readonly (readonly [unit: string, ...also: string[]])[] = [
  ['kn', 'kilonewton', 'kilonewtons'], ['n', 'newton', 'newtons'], ['dan', 'decanewton', 'decanewtons'], ['kgf', 'kp', 'kilogram-force', 'kilograms-force'],
  ['lbf', 'lb', 'lbs', 'pound', 'pounds', 'pound-force', 'pounds-force'], ['kg', 'kilo', 'kilos', 'kilogram', 'kilograms'],
  ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'], ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  ['m', 'metre', 'metres', 'meter', 'meters'], ['%', 'percent', 'per cent', 'pct'], ['\u00b0c', 'celsius', 'degrees celsius', 'degrees c'],
  ['years', 'year', 'yr', 'yrs'], ['months', 'month'], ['inch', 'inches'], ['j', 'joule', 'joules'],
];

/** Words that say nothing of what is looked for: left out of a search, unless it has no others. */
export const EMPTY_WORDS: ReadonlySet<string> = new Set(
  'a an and are as at be by can could did do does for from has have how i if in into is it its may me my no of on or our should so than that the their them then there these they this to was we were what when where which who why will with would you your'.split(' '),
);
