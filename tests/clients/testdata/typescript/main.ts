// Sends a job through the generated types and prints what it comes to. The job
// stands in job.ts, so that the compiler holds it to its type.
import createClient from "openapi-fetch";
import type { paths } from "./api.js";
import { job } from "./job.js";

const client = createClient<paths>({ baseUrl: process.argv[2] ?? "" });
const { data, error } = await client.POST("/v1/estimates", { body: job });
if (data === undefined || typeof data === "string") throw new Error(JSON.stringify(error ?? data));
const total: string = data.budget.total;
const area: number = data.totals.area_m2;
console.log(JSON.stringify({ total, area }));
