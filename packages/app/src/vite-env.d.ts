/// <reference types="vite/client" />

declare module 'virtual:demo' {
  export const demoProject: () => import('@shellraise/core').Project;
}
