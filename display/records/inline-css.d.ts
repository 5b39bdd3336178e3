/** A style sheet as text, as vite gives it: for the sheets of elements, which shadow roots keep out otherwise. */
declare module '*.css?inline' {
  const sheet: string;
  export { sheet as default };
}
