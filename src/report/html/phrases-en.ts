import { PLAN_WORDS } from '../../draw/plan-words.js';
import { GRID_DIMENSION_WORDS } from '../../frame/grid-dimension-text.js';
import { counted } from '../counted.js';
import { english } from '../languages/en.js';
import type { HtmlLanguage } from './html-phrases.js';

/** Choices that are written with a hyphen in English too, or are names of the format. */
const HYPHENATED = new Set([
  'column-profile',
  'torque-controlled',
  'displacement-controlled',
  'through-bolt',
  'cast-in',
  'as-built',
]);
const VERDICTS = {
  pass: 'no errors found by these checks',
  fail: 'errors',
  'cannot-judge': 'not judged to its end',
} as const;

/** The report for people in English, whose messages and titles stand in the rules. */
export const htmlEnglish: HtmlLanguage = {
  tag: 'en',
  rules: {},
  phrases: english,
  html: {
    plan: PLAN_WORDS,
    gridDimensions: GRID_DIMENSION_WORDS,
    choice: (value) => (HYPHENATED.has(value) ? value : value.replaceAll('-', ' ')),
    reason: (text) => text,
    units: { 'ft-in': 'feet and inches', ft: 'feet', in: 'inches', mm: 'mm', m: 'm' },
    title: (name) => `${name}: report of a check`,
    page: ['Page', 'of'],
    first: {
      kind: 'Anchor hole layout: report of a check',
      projectNumber: 'Project number',
      phase: 'Phase',
      place: 'Place',
      purpose: 'Purpose of the check',
      purposes: {
        'for-review': 'Checked for review',
        'for-drilling': 'Checked for drilling',
        'for-closeout': 'Checked for close-out',
      },
      asOf: 'As of',
      lengths: 'Lengths',
      unitNotGiven: '(no layout says how the project reads them)',
      checkedWith: 'Checked with',
      verdictHeading: 'What the check says',
      formOfFiles: (verdict) => `Form of the files: ${VERDICTS[verdict]}.`,
      site: (verdict) => `Site: ${VERDICTS[verdict]}.`,
      documentsHeading: 'What was checked',
      file: 'File',
      documentKind: 'Kind',
      size: 'Size',
      bytes: (count) => `${count} bytes`,
      fileDigest: 'Digest of the file',
      holes: 'Holes',
      judgedHoles: 'Holes judged',
    },
    unsaid: {
      heading: 'What is not said',
      found: ({ error, warning, info, accepted }) =>
        `Findings: ${counted(error, 'error')}, ${counted(warning, 'warning')}, ${info} info${accepted > 0 ? `; ${accepted} more accepted` : ''}. What no rule is about is not found.`,
      unjudged: (notRun, inPart) => {
        const parts = [
          ...(notRun > 0 ? [`${counted(notRun, 'rule')} did not run`] : []),
          ...(inPart > 0
            ? [`${counted(inPart, 'rule')} judged a part of what ${inPart === 1 ? 'it is' : 'they are'} about`]
            : []),
        ];
        return `${parts.join(', ')}: see “What was not judged”.`;
      },
      noKeepOuts: 'No tendons, bars or services are in these files: nothing was there to cross.',
      keepOuts: (count) =>
        `Crossing was judged against the ${counted(count, 'keep-out')} in these files; bars, tendons and services that are not among them were not looked at.`,
      keepOutsUnjudged: (count) =>
        `${counted(count, 'keep-out')} ${count === 1 ? 'is' : 'are'} in these files; whether holes cross ${count === 1 ? 'it' : 'them'} was not judged.`,
      scansOff: 'Whether the concrete was scanned was not looked at: the rule scan-missing is off.',
      otherUnit: (file, unit, unitOfPage) =>
        `${file} reads lengths in ${unit}: messages about it are in that unit, the tables of this page in ${unitOfPage}.`,
    },
    layout: {
      layout: 'Layout',
      revision: 'Revision',
      supersedes: 'Supersedes',
      madeFrom: 'Made from',
      revisionOf: (revision, layout) => `revision ${revision} of ${layout}`,
      issued: 'Issued',
      issuedBy: 'Issued by',
      revisionNote: 'Note to the revision',
      submittal: 'Submittal',
      transmittal: 'Transmittal',
      specSection: 'Spec section',
      handedOverFor: 'Handed over for',
      preparedBy: 'Prepared by',
      checkedBy: 'Checked by (as the layout says)',
    },
    sources: {
      heading: 'Sources and parties',
      documents: 'Documents that the layouts were made from',
      documentHeads: ['Title', 'Kind', 'Revision', 'Date', 'From', 'Digest'],
      parties: 'Parties',
      partyHeads: ['Firm', 'Person', 'Role', 'Contact'],
    },
    frame: {
      heading: 'Frame, levels and control',
      levels: (unit) => `Levels, heights in ${unit} above the datum`,
      levelHeads: ['Level', 'Building', 'Datum', 'Finished floor', 'Structural top', 'Soffits'],
      control: (unit) => `Control points, ${unit}, site frame`,
      controlHeads: [
        'Point',
        'x',
        'y',
        'Height',
        'Class',
        'Standard deviation in plan',
        'Standard deviation of height',
        'Source',
        'Verified',
        'Replaced by',
      ],
      heightNotGiven: 'not given',
      siteFrame: 'Site frame',
      aboutAxes: (frame) => `${frame}: right-handed, z up, x and y plan coordinates`,
      heightsFrom: 'Heights count from',
      trueNorth: 'True north',
      projectNorth: 'Project north',
      turned: (degrees) => `${degrees}° clockwise from the y axis`,
      map: 'Map',
      georeference: (crs, eastings, northings) => `${crs}, origin at ${eastings} E, ${northings} N`,
      note: 'Note',
    },
    holes: {
      heading: 'Holes',
      byLevel: 'Holes by level',
      levelHeads: ['Level', 'Holes'],
      noLevel: 'No level given',
      byArea: 'Holes by area',
      areaHeads: ['Area', 'Holes'],
      noArea: 'No area given',
      byTrade: 'Holes by trade and firm',
      tradeHeads: ['Trade', 'Firm', 'Holes'],
      noTrade: 'No trade that can be read',
      types: (unit) => `Hole types and their least values, lengths in ${unit}`,
      typeHeads: [
        'Type',
        'Holes',
        'Anchor',
        'Dia\u00admeter',
        'Depth',
        'Embed\u00adment',
        'Spacing',
        'Edge',
        'Thick\u00adness',
        'Values from',
        'Approval',
      ],
      groupSpacings: (unit) =>
        `Spacing that was designed for groups and takes the place of the least spacing of their types, lengths in ${unit}`,
      groupHeads: ['Kind of group', 'Groups', 'Spacing', 'Source', 'Groups are'],
      moreSpacings: (count) => `And ${counted(count, 'more spacing')} of groups.`,
      edition: (name) => `edition ${name}`,
      validUntil: (date) => `valid until ${date}`,
    },
    changes: {
      heading: 'Changes',
      declaredOnly: 'Changes that a layout declares; the revision before was not at hand to hold them against',
      declaredUnread: 'Changes that a layout declares which could not be held against the revision before',
      undeclared: (layout, before, count) =>
        `${layout}: ${counted(count, 'change')} since revision ${before} ${count === 1 ? 'is' : 'are'} not declared.`,
      otherParent: (layout, before) =>
        `${layout}: the layout says that it was made from another revision than ${before}, against which it is held here.`,
      oneLabel: (layout, label) => `${layout}: both revisions are labelled ${label}, and they are not alike.`,
      uncompared: (layout) =>
        `${layout} could not be read to its end, so that it is not held against the revision before that was given.`,
      declared: 'Changes that the layout declares',
      declaredHereHeads: ['Declared change', 'Kind', 'Holes', 'Reason', 'RFI'],
      declaredHeads: ['Layout', 'Kind', 'Holes', 'Reason', 'RFI'],
      revisions: (layout, before, after) => `${layout}: revision ${before} to ${after}`,
      numbers: (before, after, paired, unchanged) =>
        `${counted(before, 'hole')} before, ${after} now; ${paired} are in both, ${unchanged} of them unchanged.`,
      parent: {
        matches: 'The layout names the revision before as the one it was made from.',
        differs: 'The layout says that it was made from another revision than the one it is held against here.',
        absent: 'The layout does not say which revision it was made from.',
      },
      newIds: (trades) => `Holes of ${trades} have new ids:`,
      knownAgain: (byPlace, byId) => `${byPlace} were known again by their places, ${byId} by their ids.`,
      moved: (unit) => `Moved, ${unit}`,
      movedHeads: ['Hole', 'From', 'To', 'By', 'Distance', 'Declared'],
      added: 'Added',
      addedHeads: ['Hole', 'In place of', 'Declared'],
      removed: 'Removed',
      removedHeads: ['Hole', 'Replaced by', 'Declared'],
      respecified: (unit) => `Specified otherwise, lengths in ${unit}`,
      reassigned: 'Assigned otherwise',
      memberHeads: ['Hole', 'What', 'Declared'],
      renumbered: 'Tagged otherwise',
      renumberedHeads: ['Hole', 'From', 'To', 'Declared'],
      redefined: (unit) => `Definitions that are new, gone or other, lengths in ${unit}`,
      redefinedHeads: ['Definition', 'State', 'What', 'Holes', 'Declared'],
      states: { added: 'added', removed: 'removed', changed: 'changed' },
      header: 'Of the layout itself',
      headerHeads: ['Member', 'What'],
      notFound: 'Declared and not found',
      notFoundHeads: ['Declared change', 'Kind', 'Holes'],
      change: (number) => `change ${number}`,
      isDeclared: { 'for-all': 'declared', 'for-some': 'declared for some', 'for-none': 'not declared' },
      more: (count) => `And ${count} more.`,
      moreIds: (count) => `and ${count} more`,
      was: (name, before) => `${name}, before ${before}`,
      asFound: 'as found',
      noValue: 'none',
    },
    unjudged: {
      heading: 'What was not judged',
      off: (rules) => `Rules that are off unless asked for, or were switched off: ${rules}.`,
      rules: 'Rules that did not run, or not on all',
      ruleHeads: ['Rule', 'About', 'Judged', 'Why'],
      notRun: 'not run',
      judged: (judged, of) => `${judged} of ${of}`,
      settings: 'What the project set otherwise than usual',
      settingHeads: ['Rule', 'Set to'],
      severity: (severity) => `severity ${severity}`,
    },
    causes: {
      heading: 'Findings by cause',
      nothing: 'Nothing was found by the rules that ran.',
      onlyAccepted: (count) =>
        `Nothing that is not accepted was found; ${counted(count, 'finding')} ${count === 1 ? 'is' : 'are'} accepted, see below.`,
      more: (count) => `And ${counted(count, 'more cause')}; the report as JSON lists them.`,
      kept: (listed, total) => `${listed} of ${total} findings were kept one by one; all are counted.`,
      rule: (id) => `rule ${id}`,
      holes: 'Holes:',
      why: 'Why it matters:',
      mend: 'What mends it:',
      accept: 'Accepted on some projects:',
    },
    accepted: {
      heading: 'Findings that are accepted for a time',
      caption: 'To accept a finding is no approval.',
      heads: ['Rule', 'What', 'Holes', 'There now', 'Reason', 'RFI', 'Owner', 'Since', 'Until', 'State'],
      matched: (now, accepted) => `${now} of ${accepted}`,
      states: {
        'in-force': 'in force',
        expired: 'ran out; counts again',
        stale: 'stale: there no more',
        'not-checked': 'not checked here',
      },
    },
    trades: {
      heading: 'Between trades',
      caption: (isPart) =>
        `Findings that two trades or files have to settle${isPart ? '; of those that were kept one by one' : ''}`,
      kept: (listed, total) =>
        `Only ${listed} of ${counted(total, 'finding')} were kept one by one. What is between trades stands here as far as it is among them; there may be more.`,
      heads: ['Between', 'And', 'Rule', 'Findings', 'Such as'],
    },
    plans: {
      heading: 'Plans',
      numbers: 'Numbers in the plans are those of the causes above.',
      moreLevels: (count) =>
        count === 1 ? 'The plan of 1 more level is left out.' : `Plans of ${count} more levels are left out.`,
    },
    schedule: {
      heading: 'Hole schedule',
      lengths: (unit, datum = 'the datum') =>
        `Lengths in ${unit}. Heights above ${datum}; “as found”: on the surface of the concrete.`,
      heads: ['Tag', 'Id', 'Trade', 'Type', 'Dimensions from gridlines', 'x', 'y', 'Height', 'Substrate'],
      noLevel: 'no level given',
      asFound: 'as found',
      more: (count) =>
        count === 1
          ? '1 more hole is not listed here; the layout has it.'
          : `${count} more holes are not listed here; the layout has them all.`,
    },
    review: {
      heading: 'Review',
      byHand: 'To be filled in by hand. This report says what was found, and nothing about who may drill.',
      outcomes: ['No exceptions taken', 'Exceptions as noted', 'Revise and resubmit', 'Rejected', 'For record only'],
      signatures: 'Names and signatures',
      heads: ['Role', 'Firm', 'Name', 'Date', 'Signature'],
      roles: ['Prepared by', 'General contractor', 'Engineer of record', 'Other'],
    },
  },
};
