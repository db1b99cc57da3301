/// <reference types="astro/client" />

declare namespace App {
  interface Locals extends Readonly<import('./layouts/page-language.ts').PageLanguage> {}
}
