// Orders, factors and solves a matrix with CHOLMOD (T. A. Davis and others), to compare with.
// Input file: int32 n, int32 entries, int32 start[n + 1], int32 row[entries], double value[entries],
// double load[n]; lower triangle by columns. Prints the least of `runs` times, milliseconds of processor:
// analyse, factor, solve, then the entries of L and the largest residual.
#include <cholmod.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
  return t.tv_sec * 1e3 + t.tv_nsec / 1e6;
}

int main(int argc, char **argv) {
  if (argc < 3) return 2;
  FILE *file = fopen(argv[1], "rb");
  int runs = atoi(argv[2]);
  int n, entries;
  if (!file || fread(&n, 4, 1, file) != 1 || fread(&entries, 4, 1, file) != 1) return 2;
  cholmod_common c;
  cholmod_start(&c);
  cholmod_sparse *a = cholmod_allocate_sparse(n, n, entries, 1, 1, -1, CHOLMOD_REAL, &c);
  cholmod_dense *b = cholmod_allocate_dense(n, 1, n, CHOLMOD_REAL, &c);
  if (fread(a->p, 4, n + 1, file) != (size_t)n + 1) return 2;
  if (fread(a->i, 4, entries, file) != (size_t)entries) return 2;
  if (fread(a->x, 8, entries, file) != (size_t)entries) return 2;
  if (fread(b->x, 8, n, file) != (size_t)n) return 2;
  double best[4] = {1e30, 1e30, 1e30, 1e30}, residual = 0, size = 0;
  for (int run = 0; run < runs; run++) {
    double t0 = now();
    cholmod_factor *f = cholmod_analyze(a, &c);
    double t1 = now();
    if (!cholmod_factorize(a, f, &c) || c.status != CHOLMOD_OK) return 1;
    double t2 = now();
    cholmod_dense *x = cholmod_solve(CHOLMOD_A, f, b, &c);
    double t3 = now();
    double all[4] = {t1 - t0, t2 - t1, t3 - t2, t3 - t0};
    for (int k = 0; k < 4; k++)
      if (all[k] < best[k]) best[k] = all[k];
    double one[2] = {1, 0}, minus[2] = {-1, 0};
    cholmod_dense *r = cholmod_copy_dense(b, &c);
    cholmod_sdmult(a, 0, minus, one, x, r, &c);
    residual = cholmod_norm_dense(r, 0, &c) / cholmod_norm_dense(b, 0, &c);
    size = c.lnz;
    cholmod_free_dense(&r, &c);
    cholmod_free_dense(&x, &c);
    cholmod_free_factor(&f, &c);
  }
  printf("%.2f %.2f %.2f %.2f %.0f %.2e\n", best[0], best[1], best[2], best[3], size, residual);
  return 0;
}
