/** An element with its properties set. Unlike those in a template, the compiler knows them: a part that changes is found out. */
export function made<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  properties: Partial<HTMLElementTagNameMap[Tag]> = {},
): HTMLElementTagNameMap[Tag] {
  return Object.assign(document.createElement(tag), properties);
}
