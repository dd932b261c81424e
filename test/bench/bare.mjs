/** The smallest endpoint of the same framework: what the preview is measured against. */
import 'reflect-metadata';
import { Controller, Get, Module } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';

class Bare {
  answer() {
    return { ok: true };
  }
}
Get()(Bare.prototype, 'answer', Object.getOwnPropertyDescriptor(Bare.prototype, 'answer'));
Controller()(Bare);
class BareModule {}
Module({ controllers: [Bare] })(BareModule);

const app = await NestFactory.create(BareModule, { logger: false });
await app.listen(Number(process.env.PORT), '127.0.0.1');
