import { type AddressInfo, connect, createServer, type Server, type Socket } from "node:net";

/** A wire to a server of TCP, which can be cut, and on which one can have nothing come through any more. */
export class Wire {
  /** How often somebody connected. */
  connected = 0;
  private isDead = false;
  private readonly sockets = new Set<Socket>();
  private readonly server: Server;

  /** @param to - port of the server; none for one that takes a connection and never answers */
  constructor(to?: number) {
    this.server = createServer((near) => {
      this.connected += 1;
      this.take(near);
      if (to === undefined) return;
      const far = connect(to, "127.0.0.1");
      this.take(far);
      near.on("data", (data) => this.isDead || far.write(data));
      far.on("data", (data) => this.isDead || near.write(data));
      near.on("close", () => far.destroy());
      far.on("close", () => near.destroy());
    });
  }

  /** @returns the port on which it listens */
  async listen(): Promise<number> {
    await new Promise<void>((resolve) => this.server.listen(0, "127.0.0.1", resolve));
    return (this.server.address() as AddressInfo).port;
  }

  /** Nothing comes through from now on, and no end is told. */
  die(): void {
    this.isDead = true;
  }

  /** What is connected anew is heard again; what died stays so. */
  revive(): void {
    for (const socket of this.sockets) socket.pause();
    this.isDead = false;
  }

  async end(): Promise<void> {
    for (const socket of this.sockets) socket.destroy();
    await new Promise((resolve) => this.server.close(resolve));
  }

  private take(socket: Socket): void {
    this.sockets.add(socket);
    socket.on("error", () => socket.destroy());
    socket.on("close", () => this.sockets.delete(socket));
  }
}
