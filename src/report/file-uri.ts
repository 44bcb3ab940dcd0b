/**
 * The name of an input as a reference to a file (RFC 3986): a relative name as a relative reference, an absolute one
 * as a `file:` URI. Names are taken to have slashes; those with a drive letter in front may have backslashes too.
 * All that is no unreserved character is percent-encoded, a lone surrogate as U+FFFD.
 */
export function fileUri(name: string): string {
  const isDrive = /^[A-Za-z]:[\\/]/.test(name);
  const path = isDrive ? name.replaceAll('\\', '/') : name;
  const segments = path.split('/').map(encodeSegment);
  if (isDrive)
    return `file:///${path[0]}:${segments
      .slice(1)
      .map((segment) => `/${segment}`)
      .join('')}`;
  return path.startsWith('/') ? `file://${segments.join('/')}` : segments.join('/');
}

function encodeSegment(segment: string): string {
  const encoded = encodeURIComponent(segment.replace(/\p{Cs}/gu, '\ufffd'));
  return encoded.replace(/[!'()*]/g, (character) => `%${character.charCodeAt(0).toString(16).toUpperCase()}`);
}
