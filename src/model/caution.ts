/** The caution that goes with everything that people act on. */
export const CAUTION =
  'Layout data only. Not a design, not a permit to drill. Confirm anchor type, embedment, edge distance and spacing with the responsible designer and the product approval. Confirm scan clearance (rebar, tendons, live services) at every hole. Follow local law, site rules and the machine operator’s instructions. Stop and raise an RFI on any obstruction.';

/** The same in one line, where the whole would drown what it stands under. */
export const SHORT_CAUTION =
  'Layout data only. Not a design, not a permit to drill. Follow product approvals, local law and site rules; scan and permit still apply.';
