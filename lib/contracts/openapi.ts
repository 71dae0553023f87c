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
import { acceptanceSchema, newOrderSchema } from './self-service.ts';

interface Operation {
  readonly method: 'get' | 'post';
  readonly path: string;
  readonly summary: string;
  readonly body?: z.ZodType;
  readonly answer: z.ZodType;
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

function described({ path, summary, body, answer, status, method }: Operation): unknown {
  const problem = {
    description: 'It was refused, and why.',
    content: content('application/problem+json', problemSchema),
  };
  const id = { name: 'id', in: 'path', required: true, schema: { type: 'integer' } };
  const once = {
    name: 'Idempotency-Key',
    in: 'header',
    required: false,
    description: 'The same key with the same request is carried out once and answered again for a day.',
    schema: { type: 'string', maxLength: 200 },
  };
  return {
    summary,
    parameters: [...(path.includes('{id}') ? [id] : []), ...(method === 'post' ? [once] : [])],
    ...(body === undefined ? {} : { requestBody: { required: true, content: content('application/json', body) } }),
    responses: {
      [status]: { description: 'As asked.', content: content('application/json', answer) },
      400: problem,
      401: problem,
      404: problem,
      409: problem,
      422: problem,
      429: problem,
    },
  };
}

function content(type: string, schema: z.ZodType): unknown {
  return { [type]: { schema: { $ref: `#/components/schemas/${idOf(schema)}` } } };
}

function idOf(schema: z.ZodType): string {
  return z.globalRegistry.get(schema)?.id ?? 'Unnamed';
}

function schemas(): Readonly<Record<string, unknown>> {
  const named = [
    problemSchema,
    ...OPERATIONS.flatMap(({ body, answer }) => (body === undefined ? [answer] : [body, answer])),
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
