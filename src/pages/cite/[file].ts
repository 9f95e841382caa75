/** Citations of a kind in one file each: `/cite/figures.bib` and its like. */
import { citationFileText, FILE_NAMES, FORMATS } from '../../build/citing/files.ts';
import { citedFigures, comparisonCitable, figureCitable, kitCitable, lessonCitable, lessonsCitable, seriesCitable, siteCitable } from '../../build/citing/citations.ts';
import { pageEvidence, prebuiltRigs } from '../../build/comparator/page.ts';
import { siteLessons } from '../../build/lessons.ts';
import { allSeries } from '../../build/series/page.ts';
import type { Citable } from '../../citing/citable.ts';
import { rigLine } from '../../components/comparator/words.ts';

export function getStaticPaths() {
  const { slings } = pageEvidence();
  const all: Record<keyof typeof FILE_NAMES, Citable[]> = {
    site: [siteCitable()],
    figure: citedFigures().map(figureCitable),
    series: [...allSeries()].flatMap(([id, { invented }]) => (invented ? [] : [seriesCitable(id)])),
    comparison: prebuiltRigs().map((rig) => comparisonCitable(rig, rigLine(rig, slings))),
    lesson: [lessonsCitable(), ...siteLessons().map(lessonCitable)],
    kit: [kitCitable()],
  };
  return (Object.keys(FILE_NAMES) as (keyof typeof FILE_NAMES)[]).flatMap((what) => FORMATS.map((format) => ({
    params: { file: `${FILE_NAMES[what]}.${format.extension}` }, props: { text: citationFileText(format, all[what]), mediatype: format.mediatype },
  })));
}

export function GET({ props }: { props: { text: string; mediatype: string } }): Response {
  return new Response(props.text, { headers: { 'content-type': `${props.mediatype}; charset=utf-8` } });
}
