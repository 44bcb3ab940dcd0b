import type { LayoutModel } from '../model/layout-model.js';
import type { Observe } from '../model/observation.js';

/** Observes the extensions that a layout requires and nobody here knows; true where there is one. */
export function requiresUnknown(model: LayoutModel, known: ReadonlySet<string>, observe: Observe): boolean {
  const recordByte = model.memberBytes.get('extensionsRequired');
  let isUnknown = false;
  model.header.extensionsRequired?.forEach((extension, index) => {
    if (known.has(extension)) return;
    isUnknown = true;
    const at = { pointer: `/extensionsRequired/${index}`, recordByte, within: `/${index}` };
    observe({ rule: 'required-extension-unknown', at, data: { extension }, cause: extension });
  });
  return isUnknown;
}
