/** The versions of the evidence as a feed. Names in it are made from hashes, so that they outlive the site's address. */
import type { APIRoute } from 'astro';
import { atomFeed } from '../../build/versions/atom-feed.ts';
import { siteVersions } from '../../build/versions/changes-page.ts';
import { address, siteName } from '../../build/site.ts';
import { uuidUrn } from '../../build/citing/urn.ts';
import { dayOf, hashOf } from '../../build/versions/versions.ts';
import { summaryOf } from '../../components/changes/words.ts';

export const GET: APIRoute = () => {
  const entries = siteVersions().map(({ version, sha256, changes, words }) => ({
    id: uuidUrn(sha256),
    title: `Evidence ${version}`,
    day: dayOf(version),
    page: address(`/changes/${version}/`),
    summary: [words?.model, ...(words?.says ?? []), ...summaryOf(changes)].filter(Boolean).join(' '),
  }));
  const feed = atomFeed({
    id: uuidUrn(hashOf('Second Sling: changes of the evidence')),
    title: `${siteName}: changes of the evidence`,
    author: siteName,
    page: address('/changes/'),
    self: address('/changes/feed.xml'),
    entries,
  });
  return new Response(feed, { headers: { 'content-type': 'application/atom+xml; charset=utf-8' } });
};
