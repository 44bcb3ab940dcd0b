/** What a reader sees of a page, without marks. */
export function seen(text: string): string {
  return text
    .replace(/<style>[^]*?<\/style>/, '')
    .replace(/<wbr>|\u00ad/g, '')
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&quot;', '"')
    .replaceAll('&apos;', "'")
    .replace(/\s+/g, ' ');
}
