/**
 * The shape of a language's words, by the English ones: every key and every function is there, texts are any text. A
 * language in which a word is missing does not compile.
 */
export type Shape<Words> = Words extends string
  ? string
  : Words extends number | boolean | null | undefined
    ? Words
    : Words extends (...given: infer Given) => infer Said
      ? (...given: Given) => Shape<Said>
      : { readonly [Key in keyof Words]: Shape<Words[Key]> };
