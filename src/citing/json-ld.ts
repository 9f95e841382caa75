/**
 * A page's subject as JSON-LD in the vocabulary of schema.org: a data set, and where it belongs to a larger one, that one.
 * The properties are those that Google's "Dataset structured data" requires (name; description of 50 to 5,000
 * characters) and recommends (creator, license, version, url, isPartOf, distribution, citation).
 * Source: https://developers.google.com/search/docs/appearance/structured-data/dataset
 */
import type { Dataset, LearningResource, WithContext } from 'schema-dts';
import type { Citable } from './citable.ts';
import { authorDate } from './text-author-date.ts';
import { nameOf, oneLine } from './words.ts';

/** A file with the subject's data: its full address and media type. */
export interface DataFileLink { url: string; mediatype: string }

/** What a page says of its subject beyond the citation. */
export interface Described {
  /** Sentences of 50 to 5,000 characters. */
  description: string;
  keywords?: readonly string[] | undefined;
  files: readonly DataFileLink[];
  /** The larger set, by its name and address. */
  partOf?: { name: string; url: string } | undefined;
}

/** The description. Throws a RangeError where the text is shorter or longer than an index of data sets takes. */
export function datasetJsonLd({ own, original }: Citable, { description, keywords, files, partOf }: Described): WithContext<Dataset> {
  const text = oneLine(description);
  if (text.length < 50 || text.length > 5000) throw new RangeError(`description: must have 50 to 5,000 characters (has ${text.length})`);
  const body = (name: string) => ({ '@type': 'Organization', name }) as const;
  return {
    '@context': 'https://schema.org',
    '@type': 'Dataset',
    name: oneLine(own.title),
    description: text,
    ...(own.url && { url: own.url, identifier: own.url }),
    ...(own.version && { version: own.version }),
    ...(own.issued && { datePublished: own.issued }),
    ...(own.licence && { license: own.licence.url }),
    ...(own.language && { inLanguage: own.language }),
    isAccessibleForFree: true,
    creator: own.authors.map((author) => ('literal' in author ? body(author.literal) : ({ '@type': 'Person', name: nameOf(author) } as const))),
    ...(own.publisher && { publisher: body(own.publisher) }),
    ...(keywords && { keywords: [...keywords] }),
    ...(original && { citation: authorDate(original) }),
    ...(partOf && { isPartOf: { '@type': 'Dataset', name: partOf.name, url: partOf.url } }),
    ...(files.length > 0 && { distribution: files.map(({ url, mediatype }) => ({ '@type': 'DataDownload', contentUrl: url, encodingFormat: mediatype }) as const) }),
  };
}

/** What a lesson says of itself beyond the citation. */
export interface DescribedLesson { says: string; minutes: number; aims: readonly string[]; /** Level in words. */ level: string }

/**
 * A lesson as a learning resource: its kind, level, aims and time, in the properties of schema.org's LearningResource.
 * Source: https://schema.org/LearningResource; the time is a duration of ISO 8601.
 * Throws a RangeError where the minutes are no whole number above 0.
 */
export function lessonJsonLd({ own }: Citable, { says, minutes, aims, level }: DescribedLesson): WithContext<LearningResource> {
  if (!Number.isInteger(minutes) || minutes < 1) throw new RangeError(`minutes: must be a whole number above 0 (got ${minutes})`);
  return {
    '@context': 'https://schema.org',
    '@type': 'LearningResource',
    name: oneLine(own.title),
    description: oneLine(says),
    learningResourceType: 'Lesson plan',
    educationalLevel: level,
    timeRequired: `PT${minutes}M`,
    teaches: aims.map(oneLine),
    ...(own.url && { url: own.url }),
    ...(own.version && { version: own.version }),
    ...(own.issued && { datePublished: own.issued }),
    ...(own.licence && { license: own.licence.url }),
    ...(own.language && { inLanguage: own.language }),
    isAccessibleForFree: true,
    author: own.authors.map((author) => ('literal' in author ? ({ '@type': 'Organization', name: author.literal } as const) : ({ '@type': 'Person', name: nameOf(author) } as const))),
    ...(own.publisher && { publisher: { '@type': 'Organization', name: own.publisher } }),
  };
}

/** JSON-LD as the text of a script element: no text in it can end the element. */
export function jsonLdText(value: WithContext<Dataset | LearningResource>): string {
  return JSON.stringify(value).replaceAll('<', '\\u003c');
}
