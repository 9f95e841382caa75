/** What the page of the analysis hands to its script. Small, and part of the HTML. */
export interface AnalysisSetup {
  /** Folder that the site is served from, with its closing slash. */
  base: string;
  /** Pulls of the invented example, as a file of a series, and of one to compare it with. */
  /** Day that a record is written on: that of the newest evidence. */
  today: string;
  /** Methods that the comparison has a row for. */
  methods: readonly string[];
  slings: Readonly<Record<string, { form: string; material: string }>>;
  example: { text: string; name: string; text2: string; other: string };
}
