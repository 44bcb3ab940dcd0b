import type { RuleOption } from '../model/rule.js';
import { ConcreteEdges } from './concrete-edges.js';
import type { Site } from './site.js';
import { LENGTH_SLACK_MM } from './slack.js';
import { TouchingOutlines } from './touching-outlines.js';

/** The option of the rules that need to know where outlines touch. */
export const TOUCH_OPTION: RuleOption = {
  what: 'How far off each other edges of two substrates may lie and still touch: our own definition.',
  unit: 'mm',
  default: 1,
  least: 0,
  most: 1000,
};

const made = new WeakMap<Site, Map<number, SiteEdges>>();

/** The edges of the substrates of a site; looked at once. */
export function edgesOf(site: Site, touchMm: number): SiteEdges {
  const ofSite = made.get(site) ?? new Map<number, SiteEdges>();
  made.set(site, ofSite);
  const known = ofSite.get(touchMm) ?? new SiteEdges(site, touchMm);
  ofSite.set(touchMm, known);
  return known;
}

/** The edges of the substrates of a site, each with regard to the others. */
export class SiteEdges {
  private readonly touching: TouchingOutlines;
  private readonly known = new Map<number, ConcreteEdges | undefined>();

  private readonly touchMm: number;

  constructor(
    private readonly site: Site,
    touchMm: number,
  ) {
    this.touchMm = touchMm + LENGTH_SLACK_MM;
    this.touching = new TouchingOutlines(site.surfaces, this.touchMm);
  }

  /** Whether so many edges lie at one place that not all were compared. */
  get isCut(): boolean {
    return this.touching.isCut;
  }

  /** The edges of a substrate, by number of its name; undefined where it has no face or no outline. */
  of(substrate: number): ConcreteEdges | undefined {
    if (!this.known.has(substrate)) this.known.set(substrate, this.make(substrate));
    return this.known.get(substrate);
  }

  private make(substrate: number): ConcreteEdges | undefined {
    const surface = this.site.surfaces[substrate];
    if (surface?.outline === undefined) return undefined;
    return new ConcreteEdges(surface, surface.outline, (edge) => this.touching.of(substrate, edge), this.touchMm);
  }
}
