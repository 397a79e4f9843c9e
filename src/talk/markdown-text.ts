/**
 * A person's own words inside a sentence of Markdown: every sign that could make
 * emphasis, code, a link, an entity or a tag there is made plain.
 */
export function plainInMarkdown(text: string): string {
  return text.replace(/[\\`*_[\]<>|~&@]|:(?=\/)|(?<=www)\./gi, '\\$&').replace(/\s+/g, ' ')
}
