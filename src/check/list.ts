import type { RuleInfo } from '../model/rule.js';
import type { Rule } from './rule.js';
import { approvalExpired } from './rules/approval-expired.js';
import { approvalMissing } from './rules/approval-missing.js';
import { axesSwapped } from './rules/axes-swapped.js';
import { axisOutOfConcrete } from './rules/axis-out-of-concrete.js';
import { badText } from './rules/bad-text.js';
import { bitNotForType } from './rules/bit-not-for-type.js';
import { boresOverlap } from './rules/bores-overlap.js';
import { breaksOutAtEdge } from './rules/breaks-out-at-edge.js';
import { breaksThrough } from './rules/breaks-through.js';
import { byteOrderMark } from './rules/byte-order-mark.js';
import { cellEmpty } from './rules/cell-empty.js';
import { cellUnreadable } from './rules/cell-unreadable.js';
import { codeUnmapped } from './rules/code-unmapped.js';
import { columnMissing } from './rules/column-missing.js';
import { controlAmbiguous } from './rules/control-ambiguous.js';
import { controlCoincident } from './rules/control-coincident.js';
import { controlCollinear } from './rules/control-collinear.js';
import { controlDisagrees } from './rules/control-disagrees.js';
import { controlMirrored } from './rules/control-mirrored.js';
import { controlMissing } from './rules/control-missing.js';
import { controlTooFew } from './rules/control-too-few.js';
import { crossesKeepOut } from './rules/crosses-keep-out.js';
import { definitionsDiffer } from './rules/definitions-differ.js';
import { depthMissing } from './rules/depth-missing.js';
import { directionNotForType } from './rules/direction-not-for-type.js';
import { duplicateId } from './rules/duplicate-id.js';
import { duplicateName } from './rules/duplicate-name.js';
import { edgeCount } from './rules/edge-count.js';
import { edgeKindAssumed } from './rules/edge-kind-assumed.js';
import { edgeTooClose } from './rules/edge-too-close.js';
import { embedmentExceedsDepth } from './rules/embedment-exceeds-depth.js';
import { farFromOthers } from './rules/far-from-others.js';
import { feetMixed } from './rules/feet-mixed.js';
import { fluteOffset } from './rules/flute-offset.js';
import { fluteWebHit } from './rules/flute-web-hit.js';
import { framesDiffer } from './rules/frames-differ.js';
import { groupPattern } from './rules/group-pattern.js';
import { groupSoffitsDiffer } from './rules/group-soffits-differ.js';
import { heightStandIn } from './rules/height-stand-in.js';
import { holesCoincide } from './rules/holes-coincide.js';
import { holesTooClose } from './rules/holes-too-close.js';
import { inClosedArea } from './rules/in-closed-area.js';
import { jsonSyntax } from './rules/json-syntax.js';
import { keepOutWithoutExtent } from './rules/keep-out-without-extent.js';
import { layoutRepeated } from './rules/layout-repeated.js';
import { levelMismatch } from './rules/level-mismatch.js';
import { loneSurrogate } from './rules/lone-surrogate.js';
import { lookalikeId } from './rules/lookalike-id.js';
import { mapScaleSuspect } from './rules/map-scale-suspect.js';
import { memberTooThin } from './rules/member-too-thin.js';
import { missingMember } from './rules/missing-member.js';
import { nearExistingBore } from './rules/near-existing-bore.js';
import { nearMovementJoint } from './rules/near-movement-joint.js';
import { nestedTooDeep } from './rules/nested-too-deep.js';
import { noncharacter } from './rules/noncharacter.js';
import { notAChoice } from './rules/not-a-choice.js';
import { notSquare } from './rules/not-square.js';
import { notUtf8 } from './rules/not-utf8.js';
import { numberLosesDigits } from './rules/number-loses-digits.js';
import { numberOutOfRange } from './rules/number-out-of-range.js';
import { offSurface } from './rules/off-surface.js';
import { openingOutside } from './rules/opening-outside.js';
import { outOfRange } from './rules/out-of-range.js';
import { outsideArea } from './rules/outside-area.js';
import { outsideSubstrate } from './rules/outside-substrate.js';
import { patternCount } from './rules/pattern-count.js';
import { permitMissing } from './rules/permit-missing.js';
import { planMirrored } from './rules/plan-mirrored.js';
import { profileUnfit } from './rules/profile-unfit.js';
import { quoteNotClosed } from './rules/quote-not-closed.js';
import { requiredExtensionUnknown } from './rules/required-extension-unknown.js';
import { revisionUnissued } from './rules/revision-unissued.js';
import { ringNotFlat } from './rules/ring-not-flat.js';
import { ringNotSimple } from './rules/ring-not-simple.js';
import { rodSizeAsHole } from './rules/rod-size-as-hole.js';
import { rowLength } from './rules/row-length.js';
import { rowsLeftOut } from './rules/rows-left-out.js';
import { scanMissing } from './rules/scan-missing.js';
import { spansMovementJoint } from './rules/spans-movement-joint.js';
import { stopsShort } from './rules/stops-short.js';
import { substrateMissing } from './rules/substrate-missing.js';
import { symbolClash } from './rules/symbol-clash.js';
import { tagClash } from './rules/tag-clash.js';
import { throughWithoutAbove } from './rules/through-without-above.js';
import { toleranceFinerThanControl } from './rules/tolerance-finer-than-control.js';
import { toleranceMissing } from './rules/tolerance-missing.js';
import { unitsSuspect } from './rules/units-suspect.js';
import { unknownMember } from './rules/unknown-member.js';
import { unknownReference } from './rules/unknown-reference.js';
import { unsupportedVersion } from './rules/unsupported-version.js';
import { unusedDefinition } from './rules/unused-definition.js';
import { wrongCount } from './rules/wrong-count.js';
import { wrongType } from './rules/wrong-type.js';

/** All rules, in the order in which their findings at one record are listed. */
export const rules: readonly Rule[] = [
  notUtf8,
  byteOrderMark,
  jsonSyntax,
  nestedTooDeep,
  duplicateName,
  numberOutOfRange,
  numberLosesDigits,
  loneSurrogate,
  noncharacter,
  profileUnfit,
  columnMissing,
  quoteNotClosed,
  rowLength,
  cellUnreadable,
  cellEmpty,
  codeUnmapped,
  rowsLeftOut,
  unsupportedVersion,
  requiredExtensionUnknown,
  missingMember,
  unknownMember,
  wrongType,
  wrongCount,
  notAChoice,
  outOfRange,
  badText,
  duplicateId,
  unknownReference,
  lookalikeId,
  unusedDefinition,
  ringNotSimple,
  openingOutside,
  ringNotFlat,
  keepOutWithoutExtent,
  edgeCount,
  patternCount,
  framesDiffer,
  layoutRepeated,
  definitionsDiffer,
  unitsSuspect,
  feetMixed,
  axesSwapped,
  planMirrored,
  offSurface,
  heightStandIn,
  levelMismatch,
  farFromOthers,
  mapScaleSuspect,
  holesCoincide,
  holesTooClose,
  boresOverlap,
  nearExistingBore,
  groupPattern,
  groupSoffitsDiffer,
  outsideSubstrate,
  edgeTooClose,
  breaksOutAtEdge,
  edgeKindAssumed,
  nearMovementJoint,
  spansMovementJoint,
  breaksThrough,
  stopsShort,
  memberTooThin,
  axisOutOfConcrete,
  notSquare,
  directionNotForType,
  embedmentExceedsDepth,
  fluteWebHit,
  fluteOffset,
  crossesKeepOut,
  controlMissing,
  controlTooFew,
  controlCoincident,
  controlCollinear,
  controlAmbiguous,
  controlMirrored,
  controlDisagrees,
  toleranceFinerThanControl,
  toleranceMissing,
  symbolClash,
  tagClash,
  bitNotForType,
  rodSizeAsHole,
  approvalMissing,
  approvalExpired,
  depthMissing,
  substrateMissing,
  throughWithoutAbove,
  outsideArea,
  inClosedArea,
  permitMissing,
  scanMissing,
  revisionUnissued,
];

/** All rules as data: what they say, why it matters, how to mend it. */
export const ruleCatalogue: readonly RuleInfo[] = rules;
