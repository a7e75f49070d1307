declare module 'write-file-atomic' {
  interface Options {
    readonly encoding?: 'utf8';
    readonly fsync?: boolean;
    readonly mode?: number;
  }
  export default function writeFileAtomic(
    path: string,
    data: string | Uint8Array,
    options?: Options,
  ): Promise<void>;
}
