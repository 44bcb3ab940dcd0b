import type { Bore, KeepOut, Outline } from '../generated/layout.js';

/** All words on a plan; other languages give their own. Counts are whole numbers above zero. */
export interface PlanWords {
  readonly noLevel: string;
  readonly seenFromAbove: string;
  readonly keyPlan: string;
  readonly noOutline: string;
  scale(name: string): string;
  holes(count: number): string;
  readonly trueNorth: string;
  readonly projectNorth: string;
  readonly noNorth: string;
  /** Letters at the arrows. */
  readonly trueNorthLetter: string;
  readonly projectNorthLetter: string;
  readonly edges: Readonly<Record<NonNullable<Outline['edges']>[number], string>>;
  readonly opening: string;
  readonly zone: string;
  readonly uprightFace: string;
  readonly keepOuts: Readonly<Record<KeepOut['kind'], string>>;
  readonly standoff: string;
  readonly bores: Readonly<Record<Bore['end'], string>>;
  readonly group: string;
  readonly cause: string;
  readonly noSymbol: string;
  unknownShape(shape: string): string;
  moreTrades(count: number): string;
  readonly alike: string;
  readonly alikeButForColour: string;
  readonly lettersLeftOut: string;
  tagsLeftOut(count: number, of: number): string;
  namesLeftOut(count: number): string;
  causesLeftOut(count: number): string;
  holesOutside(count: number): string;
  holesUnread(count: number): string;
  holesInOnePlace(count: number): string;
  holesMerged(count: number, paper: string): string;
  keepOutsWithoutLevel(count: number): string;
  boresWithoutLevel(count: number): string;
  shapesLeftOut(count: number): string;
}

const s = (count: number, one: string, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;

export const PLAN_WORDS: PlanWords = {
  noLevel: 'No level given',
  seenFromAbove: 'Plan orientation, as if seen from above',
  keyPlan: 'Key plan',
  noOutline: 'no outline given',
  scale: (name) => `Scale ${name} at full size`,
  holes: (count) => s(count, 'hole'),
  trueNorth: 'N: true north',
  projectNorth: 'PN: project north',
  noNorth: 'North is not given',
  trueNorthLetter: 'N',
  projectNorthLetter: 'PN',
  edges: {
    free: 'Free edge',
    opening: 'Edge at an opening',
    continuous: 'Concrete goes on',
    'construction-joint': 'Construction joint',
    'movement-joint': 'Movement joint',
  },
  opening: 'Opening',
  zone: 'Other thickness or height',
  uprightFace: 'Upright face',
  keepOuts: {
    tendon: 'Keep-out: tendon',
    bar: 'Keep-out: bar',
    conduit: 'Keep-out: conduit',
    embed: 'Keep-out: embed',
    'live-service': 'Keep-out: live service',
    other: 'Keep-out: other',
  },
  standoff: 'Standoff and tolerance',
  bores: {
    complete: 'Existing bore',
    partial: 'Existing bore, partial',
    abandoned: 'Existing bore, abandoned',
  },
  group: 'Holes of one group',
  cause: 'Cause in the report',
  noSymbol: 'no symbol given',
  unknownShape: (shape) => `"${shape}" as a circle`,
  moreTrades: (count) => `and ${s(count, 'more trade')}`,
  alike: 'Some trades look alike: the layout gives them no symbols that differ in shape, letters or colour.',
  alikeButForColour: 'Some trades differ in colour only: the layout gives them no other shape or letters.',
  lettersLeftOut: 'Trades of one shape differ in letters that find no room at this scale.',
  tagsLeftOut: (count, of) => `Tags of ${count} of ${s(of, 'hole')} left out where crowded.`,
  namesLeftOut: (count) => `${s(count, 'name')} of gridlines and keep-outs left out where crowded.`,
  causesLeftOut: (count) => `${s(count, 'cause')} not pointed out for want of room.`,
  holesOutside: (count) => `${s(count, 'hole lies', 'holes lie')} outside of this plan.`,
  holesUnread: (count) =>
    `${s(count, 'hole')} of the layouts cannot be read and ${count === 1 ? 'is' : 'are'} on no plan.`,
  holesInOnePlace: (count) => `${s(count, 'hole lies', 'holes lie')} at the plan position of another one.`,
  holesMerged: (count, paper) => `${s(count, 'hole')} within ${paper} of another one on paper not drawn by themselves.`,
  keepOutsWithoutLevel: (count) => `${s(count, 'keep-out')} of unknown level on no plan.`,
  boresWithoutLevel: (count) => `${s(count, 'existing bore')} of unknown level on no plan.`,
  shapesLeftOut: (count) =>
    `${s(count, 'outline or keep-out', 'outlines and keep-outs')} beyond the most that are drawn left out.`,
};
