/*
 * The OpenAPI document of the routes for customers' programs, made from the schemas that read and answer them.
 * Invariant: a schema stands once, under its id; every route names its problems.
 * Not here: the routes themselves (app/api/v1/orders).
 * Read next: self-service.ts, order-answers.ts.
 */
import { z } from 'zod';
import {
  acceptedSchema,
  handedSchema,
  handOverSchema,
  orderAnswerSchema,
  problemSchema,
  quoteAskedSchema,
  quotedSchema,
} from './order-answers.ts';
import { extensionAnswerSchema, extensionSchema, noticeSchema, offHireSchema, orderHireSchema } from './order-hire.ts';
import { acceptanceSchema, newOrderSchema } from './self-service.ts';

interface Operation {
  readonly method: 'get' | 'post';
  readonly path: string;
  readonly summary: string;
  readonly body?: z.ZodType;
  /** What may stand after the question mark, each a text. */
  readonly query?: Readonly<Record<string, string>>;
  /** A PDF where it is a paper. */
  readonly answer: z.ZodType | 'paper';
  readonly status: 200 | 201;
}

const ONE = '/api/v1/orders/{id}';

export const OPERATIONS: readonly Operation[] = [
  {
    method: 'post',
    path: '/api/v1/orders',
    summary: 'Makes an order of valves, place and dates, and works it out.',
    body: newOrderSchema,
    answer: orderAnswerSchema,
    status: 201,
  },
  { method: 'get', path: ONE, summary: 'Answers an order as it stands.', answer: orderAnswerSchema, status: 200 },
  {
    method: 'post',
    path: `${ONE}/quote`,
    summary: 'Makes a firm order into a numbered quote.',
    body: quoteAskedSchema,
    answer: quotedSchema,
    status: 200,
  },
  {
    method: 'post',
    path: `${ONE}/accept`,
    summary: 'Orders what was quoted, once.',
    body: acceptanceSchema,
    answer: acceptedSchema,
    status: 200,
  },
  {
    method: 'post',
    path: `${ONE}/hand-over`,
    summary: 'Gives the order to the house with everything filled in.',
    body: handOverSchema,
    answer: handedSchema,
    status: 200,
  },
  {
    method: 'get',
    path: `${ONE}/hire`,
    summary: 'Answers the hire of an order: what left, notices, extensions, what came back, and what is missing.',
    answer: orderHireSchema,
    status: 200,
  },
  {
    method: 'post',
    path: `${ONE}/off-hire`,
    summary: 'Gives notice that the hire of pieces ends now, once for each piece.',
    body: offHireSchema,
    answer: noticeSchema,
    status: 200,
  },
  {
    method: 'get',
    path: `${ONE}/extension`,
    summary: 'Tells what keeping it longer would cost, or that the house answers; changes nothing.',
    query: { until: 'The new last day of hire (YYYY-MM-DD).' },
    answer: extensionAnswerSchema,
    status: 200,
  },
  {
    method: 'post',
    path: `${ONE}/extension`,
    summary: 'Keeps it longer: at once where nobody else is moved, otherwise as a wish that the house answers.',
    body: extensionSchema,
    answer: extensionAnswerSchema,
    status: 200,
  },
  {
    method: 'get',
    path: `${ONE}/papers/{kind}`,
    summary: 'A paper of the order, as the answer about its hire names them.',
    answer: 'paper',
    status: 200,
  },
];

export function openApiDocument(): Readonly<Record<string, unknown>> {
  const paths: Record<string, Record<string, unknown>> = {};
  for (const operation of OPERATIONS) {
    paths[operation.path] = { ...paths[operation.path], [operation.method]: described(operation) };
  }
  return {
    openapi: '3.1.0',
    info: {
      title: 'Kitwright: orders by program',
      version: '1',
      description:
        'Figures are estimates until they are measured; nothing that is answered here is an approval. Keys are given by the house, one or more for each customer.',
    },
    security: [{ key: [] }],
    paths,
    components: {
      securitySchemes: {
        key: { type: 'http', scheme: 'bearer', description: 'A key of the house: kw_ and 43 letters.' },
      },
      schemas: schemas(),
    },
  };
}

function described(operation: Operation): unknown {
  const { summary, body, answer, status } = operation;
  const problem = {
    description: 'It was refused, and why.',
    content: content('application/problem+json', problemSchema),
  };
  return {
    summary,
    parameters: parameters(operation),
    ...(body === undefined ? {} : { requestBody: { required: true, content: content('application/json', body) } }),
    responses: {
      [status]: { description: 'As asked.', content: answer === 'paper' ? PDF : content('application/json', answer) },
      400: problem,
      401: problem,
      404: problem,
      409: problem,
      422: problem,
      429: problem,
    },
  };
}

function parameters({ path, method, query = {} }: Operation): readonly unknown[] {
  const id = { name: 'id', in: 'path', required: true, schema: { type: 'integer' } };
  const kind = {
    name: 'kind',
    in: 'path',
    required: true,
    description:
      '“quote”, “summary” (a page of it in English), “site-sheet” once the house has confirmed, or the number of a return note.',
    schema: { type: 'string', maxLength: 40 },
  };
  const once = {
    name: 'Idempotency-Key',
    in: 'header',
    required: false,
    description: 'The same key with the same request is carried out once and answered again for a day.',
    schema: { type: 'string', maxLength: 200 },
  };
  return [
    ...(path.includes('{id}') ? [id] : []),
    ...(path.includes('{kind}') ? [kind] : []),
    ...Object.entries(query).map(([name, description]) => ({
      ...{ name, in: 'query', required: true, description, schema: { type: 'string' } },
    })),
    ...(method === 'post' ? [once] : []),
  ];
}

/** Bytes of a PDF, which OpenAPI 3.1 describes by their type alone. */
const PDF = { 'application/pdf': {} };

function content(type: string, schema: z.ZodType): unknown {
  return { [type]: { schema: { $ref: `#/components/schemas/${idOf(schema)}` } } };
}

function idOf(schema: z.ZodType): string {
  return z.globalRegistry.get(schema)?.id ?? 'Unnamed';
}

function schemas(): Readonly<Record<string, unknown>> {
  const named = [
    problemSchema,
    ...OPERATIONS.flatMap(({ body, answer }) => [body, answer]).filter(
      (schema) => schema !== undefined && schema !== 'paper',
    ),
  ];
  const all: Record<string, unknown> = {};
  for (const schema of new Set(named)) {
    const { $defs = {}, $schema: _schema, ...json } = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' });
    all[idOf(schema)] = rooted(json);
    for (const [name, inner] of Object.entries($defs)) all[name] = rooted(inner);
  }
  return all;
}

/** References that the schemas make within themselves become references into the document. */
function rooted(json: unknown): unknown {
  return JSON.parse(JSON.stringify(json).replaceAll('#/$defs/', '#/components/schemas/'));
}
