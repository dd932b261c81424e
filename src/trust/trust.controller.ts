import { Controller, Get, NotFoundException, Res } from '@nestjs/common';
import { ApiProduces, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { X509Certificate } from 'node:crypto';
import { authorityCertificate, certificateFolder } from '../certificates/certificate-folder.js';

/** The household's authority, as a phone shows it before it trusts. */
export interface AuthorityView {
  readonly name: string;
  /** SHA-256 of the certificate, to be compared with what a phone shows. */
  readonly fingerprint: string;
  /** Day on which it ends. */
  readonly endsOn: string;
}

@ApiTags('trust')
@Controller('trust')
export class TrustController {
  /** The household's authority; `authority` is left out when none was made. */
  @Get()
  view(): { authority?: AuthorityView } {
    const pem = authorityCertificate(certificateFolder());
    if (pem === undefined) return {};
    const certificate = new X509Certificate(pem);
    return {
      authority: {
        name: certificate.subject.replace(/^CN=/, ''),
        fingerprint: certificate.fingerprint256,
        endsOn: new Date(certificate.validTo).toISOString().slice(0, 10),
      },
    };
  }

  /** The certificate of the authority, for a phone to trust. Its key is never sent. */
  @Get('authority.crt')
  @ApiProduces('application/x-x509-ca-cert')
  download(@Res() response: Response): void {
    const pem = authorityCertificate(certificateFolder());
    if (pem === undefined)
      throw new NotFoundException(
        'There is no authority yet. Make it with npm run certificate on the computer that Broodfold runs on.',
      );
    response
      .type('application/x-x509-ca-cert')
      .setHeader('Content-Disposition', 'attachment; filename="broodfold-authority.crt"')
      .send(pem);
  }
}
