/** How the parts of the page that no style sheet reaches are to look. */
export interface PageTheme {
  readonly name: string;
  /** The ground, as a CSS colour, for the system's bars around the page. */
  readonly ground: string;
  /** Decides scroll bars, form parts and the ground before the first paint. */
  readonly scheme: 'light' | 'dark';
}

/** Puts the theme on the root element and on the `theme-color` meta. */
export function setPageTheme(page: Document, { name, ground, scheme }: PageTheme): void {
  page.documentElement.dataset['theme'] = name;
  page.documentElement.style.colorScheme = scheme;
  page.querySelector<HTMLMetaElement>('meta[name="theme-color"]')?.setAttribute('content', ground);
}
