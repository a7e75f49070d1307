/* Serial schedule generation for at most four resources packed in one 32-bit word, as a physical reference for
 * the speed of the same pass in JavaScript. Standard input, all whole numbers: networks; for each network count,
 * guards, free day, then for every activity duration, packed demand, number of predecessors and these; then the
 * number of lists, the lists, and how often to decode them all. Prints the decoded schedules, the CPU seconds and
 * the sum of the last finishes. */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum { MOST_DAYS = 8192 };

static int read_number(void) {
  long number;
  if (scanf("%ld", &number) != 1) exit(1);
  return (int)number;
}

static int pass(int count, const int *duration, const uint32_t *demand, const int *first, const int *before,
                uint32_t guards, uint32_t free_day, const int *list, int *finish, uint32_t *free_units) {
  int last = 0;
  for (int k = 0; k < count; k++) {
    int a = list[k], start = 0;
    for (int p = first[a]; p < first[a + 1]; p++) {
      int f = finish[before[p]];
      if (f > start) start = f;
    }
    int d = duration[a], end = start + d;
    uint32_t w = demand[a];
    if (w) {
      for (int day = end - 1, known = start; day >= known; day--) {
        if (((free_units[day] - w) & guards) != guards) {
          known = end;
          end = day + 1 + d;
          day = end;
        }
      }
      for (int day = end - d; day < end; day++) free_units[day] -= w;
    }
    finish[a] = end;
    if (end > last) last = end;
  }
  for (int day = 0; day < last; day++) free_units[day] = free_day;
  return last;
}

int main(void) {
  static uint32_t free_units[MOST_DAYS];
  long decoded = 0, sum = 0;
  double seconds = 0;
  int networks = read_number();
  for (int net = 0; net < networks; net++) {
    int count = read_number();
    uint32_t guards = (uint32_t)read_number(), free_day = (uint32_t)read_number();
    int *duration = malloc(sizeof(int) * count), *first = malloc(sizeof(int) * (count + 1));
    uint32_t *demand = malloc(sizeof(uint32_t) * count);
    int *before = malloc(sizeof(int) * count * count), *finish = calloc(count, sizeof(int)), filled = 0;
    for (int a = 0; a < count; a++) {
      duration[a] = read_number();
      demand[a] = (uint32_t)read_number();
      first[a] = filled;
      for (int left = read_number(); left > 0; left--) before[filled++] = read_number();
    }
    first[count] = filled;
    int lists = read_number();
    int *list = malloc(sizeof(int) * count * lists);
    for (int k = 0; k < count * lists; k++) list[k] = read_number();
    int rounds = read_number();
    for (int day = 0; day < MOST_DAYS; day++) free_units[day] = free_day;
    clock_t begin = clock();
    for (int round = 0; round < rounds; round++)
      for (int l = 0; l < lists; l++)
        sum += pass(count, duration, demand, first, before, guards, free_day, list + l * count, finish, free_units);
    seconds += (double)(clock() - begin) / CLOCKS_PER_SEC;
    decoded += (long)rounds * lists;
    free(duration), free(first), free(demand), free(before), free(finish), free(list);
  }
  printf("%ld %f %ld\n", decoded, seconds, sum);
  return 0;
}
