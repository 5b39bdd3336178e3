/** An element with its properties set. Unlike those in a template, the compiler knows them: a part that changes is found out. */
export function made<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  properties: Partial<HTMLElementTagNameMap[Tag]> = {},
): HTMLElementTagNameMap[Tag] {
  const element = document.createElement(tag);
  // Without its type: the linter would hold the properties of every element against those of every other, for a minute.
  Object.assign<object, object>(element, properties);
  return element;
}
