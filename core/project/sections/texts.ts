import { z } from 'zod';

export const words = z.string().max(4000);
export const titleText = z.string().min(1).max(200);
export const year = z.int().min(1850).max(2100);
export const share = z
  .string()
  .regex(/^(0(\.\d{1,6})?|1(\.0{1,6})?)$/, 'write a share between 0 and 1, such as 0.25');
