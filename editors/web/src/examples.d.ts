/** The bundled collection and the recipe to start from, put in by the build. */
declare module "virtual:examples" {
  export interface Example {
    path: string;
    title: string;
    about: string;
    text: string;
  }
  export const examples: Example[];
  export const starter: string;
}
