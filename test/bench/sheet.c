/* The arithmetic of test/bench/sheet.ts as a plain loop over lines and trials, for comparison of speed. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define LINES 200
#define BATCH 256
#define LIFT (1 + 4e-15)
#define HALF (0.5 + 2e-8)

static inline double rounded(double x, double f) {
  double y = x * f * LIFT;
  return trunc(y + (y < 0 ? -HALF : HALF)) / f;
}

static double in[5][LINES][BATCH], total[BATCH];
static double holds[LINES], plant[LINES], fee[LINES], sub[LINES], lump[LINES], bears[LINES], index_[LINES], least[LINES];

static void run(int uncertain) {
  for (int i = 0; i < BATCH; i++) total[i] = 0;
  for (int k = 0; k < LINES; k++)
    for (int i = 0; i < BATCH; i++) {
      double taken = in[0][k][i];
      double production = uncertain > 1 ? in[1][k][i] : in[1][k][0];
      double crew = uncertain > 2 ? in[2][k][i] : in[2][k][0];
      double stuff = uncertain > 3 ? in[3][k][i] : in[3][k][0];
      double per = uncertain > 4 ? in[4][k][i] : in[4][k][0];
      double q = rounded(taken, 10), hours = rounded(q / production, 10), tonnes = rounded(q * per, 100);
      double boxes = ceil(rounded(tonnes / holds[k], 10000));
      double labour = rounded(hours * crew * index_[k], 100), equipment = rounded(hours * plant[k] * index_[k], 100);
      double material = rounded(q * stuff * index_[k], 100), disposal = rounded(boxes * fee[k] * 1.15 * index_[k], 100);
      double freight = rounded(tonnes * 38.5 * index_[k], 100), charge = fmax(freight, least[k]);
      double handling = rounded(boxes * 62.25 * index_[k], 100);
      double direct = labour + equipment + material + disposal + charge + handling + sub[k] + lump[k];
      double overhead = rounded((labour + equipment) * bears[k] * 0.12, 100);
      double tax = rounded((material + equipment) * 0.065, 100), insurance = rounded(direct * 0.011, 100);
      double profit = rounded((direct + overhead) * 0.085, 100);
      total[i] += direct + overhead + tax + insurance + profit;
    }
}

int main(int argc, char **argv) {
  int uncertain = argc > 1 ? atoi(argv[1]) : 1;
  for (int k = 0; k < LINES; k++) {
    holds[k] = 9.5; plant[k] = 85.5; fee[k] = 1150; sub[k] = k % 4 ? 0 : 12500; lump[k] = k % 9 ? 0 : 350;
    bears[k] = k % 3 != 0; index_[k] = 1 + 0.0025 * (k % 20); least[k] = 250;
    for (int i = 0; i < BATCH; i++) {
      double s = 0.8 + 0.4 * i / BATCH;
      in[0][k][i] = (100 + k * 7.35) * s; in[1][k][i] = (2 + k % 5 * 0.5) * s; in[2][k][i] = (410 + k) * s;
      in[3][k][i] = (3 + k % 3) * s; in[4][k][i] = (0.01 + k % 7 * 0.004) * s;
    }
  }
  double best = 0;
  for (int r = 0; r < 7; r++) {
    clock_t t = clock();
    for (int n = 0; n < 160; n++) run(uncertain);
    double rate = 160.0 * BATCH / ((double)(clock() - t) / CLOCKS_PER_SEC);
    if (rate > best) best = rate;
  }
  printf("%.0f %.2f\n", best, total[0]);
  return 0;
}
