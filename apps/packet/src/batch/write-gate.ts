/** Lets writes through until it is closed, so that a program ends between two of them and never within one. */
export class WriteGate {
  private closed = false;
  private readonly open = new Set<Promise<unknown>>();

  /** Does a piece of writing; once the gate is closed it is not begun, and the promise stays open while the program ends. */
  through<T>(write: () => Promise<T>): Promise<T> {
    if (this.closed) return new Promise(() => undefined);
    const writing = write();
    this.open.add(writing);
    const settled = () => void this.open.delete(writing);
    writing.then(settled, settled); // whoever writes has the error
    return writing;
  }

  /** Resolves when nothing is being written any more. */
  async close(): Promise<void> {
    this.closed = true;
    await Promise.allSettled(this.open);
  }
}
