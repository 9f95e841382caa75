/** What no verdict on a sling can see, whatever the answers are. Each as a sentence for people with the figures behind it. */

export interface Unseen { says: string; figures: readonly string[] }

export const CANNOT_SEE: readonly Unseen[] = [
  { says: "The device's own age, and its maker's limit for it. A sling that is attached at home restarts no clock of the device.", figures: ['common-practice/device-clock'] },
  { says: 'Loss that leaves no mark. Acid can take much strength and show nothing.', figures: ['schubert-1998/chemicals-and-light#battery-acid'] },
  { says: 'What a cover hides. Stitching that cannot be looked at counts as not looked at.', figures: ['en-566/stitching'] },
  { says: 'The force at which this sling breaks. No rule gives it, and a pull in a test uses the sling up.', figures: ['osha-1988/proof-loading'] },
  { says: "A recall, or what the maker's instruction asks beyond a life in years. The instruction comes first.", figures: ['eu-2016-425/instructions'] },
  { says: 'What its owner does not remember, or was not told.', figures: [] },
];
