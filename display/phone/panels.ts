/** Every panel that a card opens: what a page shows first needs none of them. */
