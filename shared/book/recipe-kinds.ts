import type { Ingredient } from '../documents/formula.ts';
import { folded } from './folded.ts';

/**
 * What a name in English, German or French most likely is; the first that fits. A guess to begin with: whoever brings a
 * recipe in looks at it, and allergens are never guessed.
 */
const KINDS: readonly (readonly [RegExp, Ingredient['kind']])[] = [
  [
    /\b(?:baking (?:powder|soda)|backpulver|natron|levure chimique|bicarbonate|rose ?water|rosenwasser|eau de rose|orange (?:flower|blossom) water)\b/,
    'other',
  ],
  [/\b(?:starter|levain|sourdough|sauerteig|poolish|biga|sponge|vorteig)\b/, 'other'],
  [
    /\b(?:buttermilk|buttermilch|babeurre|milk|cream|creme|lait|yog(?:h)?urt|yaourt|joghurt|quark|curd|whey|molke|skyr|kefir|cheese|fromage)\b|milch\b|sahne\b|kase\b/,
    'dairy',
  ],
  [
    /\b(?:butter|beurre|oil|huile|lard|shortening|margarine|ghee|schmalz|saindoux|fat)\b|butter\b|(?:oliven|sonnenblumen|raps|pflanzen|sesam|nuss|keim)ol\b|\bol\b/,
    'fat',
  ],
  [/\b(?:nuts?|hazelnuts?|walnuts?|almonds?)\b.*\b(?:meal|flour)\b/, 'other'],
  [/\b(?:flours?|farine|semolina|semola|semoule|meal|wholemeal)\b|mehl\b|\bmehle\b|griess\b|dunst\b|schrot\b/, 'flour'],
  [/\b(?:salt|sel|fleur de sel)\b|salz\b/, 'salt'],
  [/\b(?:yeast|levure|hefe)\b|hefe\b/, 'yeast'],
  [
    /\b(?:sugar|sucre|honey|miel|honig|syrup|sirop|molasses|treacle|melasse|malt|cassonade)\b|zucker\b|sirup\b|honig\b|rubenkraut\b/,
    'sugar',
  ],
  [/\b(?:eggs?|egg (?:yolks?|whites?)|ei|eier|eigelb|eiweiss|oeufs?|jaunes?|blancs? d oeufs?)\b/, 'egg'],
  [/\b(?:seeds?|graines?|linseed|flaxseed|sesame|poppy|pavot|lin|mohn|leinsamen|sesam|saaten)\b|kerne\b|samen\b/, 'seed'],
  [/^(?:.* )?(?:water|wasser|eau|ice|eis|glace)(?: (?:froide|tiede|chaude|bouillante))?$/, 'water'],
];

/** The kind of an ingredient by its name; `other` where no word says. */
export function kindOfName(name: string): Ingredient['kind'] {
  const text = folded(name);
  return KINDS.find(([words]) => words.test(text))?.[1] ?? 'other';
}
