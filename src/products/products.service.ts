import { Injectable } from '@nestjs/common';
import { plainDateAt } from '../../shared/calendar/plain-date.js';
import { freePriceProblems, withEarlierPrice } from '../../shared/farm/feed-product.js';
import type { FeedProduct, Product } from '../../shared/farm/product.js';
import type { Saved } from '../../shared/farm/saved.js';
import { checkProduct } from '../../shared/plan/check-products.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { Database } from '../database/database.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { TablesService } from '../reference/tables.service.js';
import { refuseOtherKind, RowsOfFarm } from '../rows/rows-of-farm.js';
import { checkSentProduct } from './product.dto.js';
import { SupplierEntity } from '../suppliers/supplier.entity.js';
import { ProductEntity, toProduct } from './product.entity.js';

/** What the place buys for its birds, with the price and the size it is sold in. */
@Injectable()
export class ProductsService extends RowsOfFarm<ProductEntity, Saved<Product>, unknown> {
  constructor(
    database: Database,
    private readonly tables: TablesService,
  ) {
    super(database, ProductEntity, {
      noun: 'product',
      order: ['kind', 'name', 'id'],
      view: toProduct,
      tells: {
        of: ({ kind }) => kind,
        fields: (row) => ({ ...toProduct(row) }),
        name: (row) => row.name,
      },
    });
  }

  protected async valuesOf(farmId: string, body: unknown, before?: ProductEntity) {
    const sent = checkSentProduct(body);
    checkProduct(sent, this.tables.tables);
    const free = freePriceProblems(sent);
    if (0 < free.length) throw new FieldError(free);
    refuseOtherKind(
      before?.kind,
      sent.kind,
      `This is ${before?.kind}: add a new product for ${sent.kind}, and delete this one if it is no longer bought.`,
    );
    const product =
      sent.kind === 'feed'
        ? await this.checkedFeed(farmId, sent, before && toProduct(before))
        : sent;
    const { id: _id, version: _version, kind, name, ...details } = product as typeof sent;
    return { kind, name, details };
  }

  /** A feed with the price it had before, where that is another one now. */
  private async checkedFeed(
    farmId: string,
    feed: FeedProduct,
    before: Product | undefined,
  ): Promise<FeedProduct> {
    const { timeZone } = await this.database.manager.findOneByOrFail(FarmEntity, { id: farmId });
    const today = plainDateAt(Date.now(), timeZone);
    const problems: FieldProblem[] = [
      ...(feed.earlierPrices ?? []).flatMap(({ until }, k) =>
        today < until
          ? [
              {
                field: `earlierPrices.${k}.until`,
                code: 'out-of-bounds' as const,
                given: until,
                max: today,
                fix: 'Give a day that has been: until then it cost that.',
              },
            ]
          : [],
      ),
      ...(feed.storeOn !== undefined && today < feed.storeOn
        ? [
            {
              field: 'storeOn',
              code: 'out-of-bounds' as const,
              given: feed.storeOn,
              max: today,
              fix: 'Give a day that has been: the one on which you counted.',
            },
          ]
        : []),
    ];
    const { supplierId } = feed;
    const sellers = await this.database.manager.findBy(SupplierEntity, { farmId });
    if (supplierId !== undefined && !sellers.some(({ id }) => id === supplierId))
      problems.push({
        field: 'supplierId',
        code: 'not-allowed',
        given: supplierId,
        allowed: sellers.map(({ id }) => id),
        fix: 'Name one of the sellers under Where you buy, or leave it out.',
      });
    if (0 < problems.length) throw new FieldError(problems);
    return before?.kind === 'feed' ? withEarlierPrice(feed, before, today) : feed;
  }
}
