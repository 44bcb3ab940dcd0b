import { planOfLevel } from '../../draw/plan-of-level.js';
import { type NumberedCause, sitePlan } from '../../draw/site-plan.js';
import { svgText } from '../../draw/svg.js';
import { html, Markup } from './markup.js';
import type { HtmlReportParts } from './reported-layout.js';

/** Room of a plan on A4 and on Letter with the margins of the page, mm. */
const PAPER = { width: 180, mostHeight: 222 };
/** Plans of more levels are left out and counted. */
const MOST_LEVELS = 60;

/** Closes the box that keeps the heading on the page of the first plan. */
const END_OF_FIRST = new Markup('</div>');

/** The plan of each level with its holes and what was found there. In pieces, since there may be many. */
export function* plansSection({ report, layouts, language }: HtmlReportParts): Generator<string> {
  const { plans: words, plan: drawn } = language.html;
  const plan = sitePlan(layouts.map(({ model, tagOf }) => ({ layout: model, tagOf })));
  if (plan.levels.length === 0) return;
  const causes = report.causes.flatMap(({ id, input, holes, accepted }): NumberedCause[] => {
    const layout = layouts.findIndex((one) => one.input === input - 1);
    if (layout < 0 || accepted !== undefined || holes.length === 0) return [];
    return [{ number: id, layout, holes: holes.map((hole) => hole.id) }];
  });
  const byLevel = plan.causesByLevel(causes);
  yield html`<section aria-labelledby="plans"><div class="together"><h2 id="plans">${words.heading}</h2>
${causes.length > 0 && html`<p>${words.numbers}</p>\n`}`.text;
  for (const [k, level] of plan.levels.slice(0, MOST_LEVELS).entries()) {
    const drawing = planOfLevel(level, { paper: PAPER, causes: byLevel[k], words: drawn });
    const svg = new Markup(svgText(drawing, { idPrefix: `plan${k}-` }));
    yield html`<figure><figcaption class="unseen">${level.name ?? drawn.noLevel}${level.building !== undefined && `, ${level.building}`}</figcaption>
${svg}
</figure>${k === 0 && END_OF_FIRST}
`.text;
  }
  const rest = plan.levels.length - MOST_LEVELS;
  if (rest > 0) yield html`<p>${words.moreLevels(rest)}</p>\n`.text;
  yield '</section>\n';
}
