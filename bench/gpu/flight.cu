// The flight of src/gpu/wgsl written by hand for CUDA: the same method, decisions and answers, default law, uniform wind.
// usage: flight LAUNCHES.f32 RESULTS.f32 FLIGHTS REPEATS: five columns in (ball speed, launch angle, spin rate, direction,
// axis tilt), five out (carry, side, apex, hang time, flags); prints the seconds of the best run.
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <vector>

#ifndef BLOCK
#define BLOCK 64
#endif

struct Scene {
  float windAlong, windAcross, elevation, slopeX, slopeZ, density, viscosity, force, radius, spinDecay, timeLimit;
  float reynoldsLow, reynoldsHigh, spinLow, spinHigh;
  unsigned flights;
};

struct State { float a, b, c, w; };
struct Vector { float a, b, c; };

__device__ inline State operator+(State p, State q) { return {p.a + q.a, p.b + q.b, p.c + q.c, p.w + q.w}; }
__device__ inline State operator*(float f, State p) { return {f * p.a, f * p.b, f * p.c, f * p.w}; }
__device__ inline Vector operator+(Vector p, Vector q) { return {p.a + q.a, p.b + q.b, p.c + q.c}; }
__device__ inline Vector operator*(float f, Vector p) { return {f * p.a, f * p.b, f * p.c}; }
__device__ inline Vector velocityOf(State p) { return {p.a, p.b, p.c}; }
__device__ inline float dot(Vector p, Vector q) { return p.a * q.a + p.b * q.b + p.c * q.c; }

struct Flight {
  float drag, lift, decay, reynoldsPerSpeed, gravity2, gravity3;

  __device__ void coefficients(float re, float s, float &cl, float &cd) const {
    float square = s * s, sixth = square * square * square;
    float whole = 0.0395f * (1.0f - expf(s * (-1.0f / 0.012f))) + 0.4493f * (1.0f - expf(s * (-1.0f / 0.2958f)));
    float loss = 1.0f / ((1.0f + expf(fminf((re - 62500.0f) * (1.0f / 6250.0f), 80.0f))) * (1.0f + sixth * 543.9909f));
    float crisis = 1.0f / ((1.0f + expf(fminf((re - 50000.0f) * (1.0f / 5000.0f), 80.0f))) * (1.0f + sixth * 15625.0f));
    cl = whole * (1.0f - loss);
    cd = 0.2059f + 0.2616f * square / (square + 0.3024f * 0.3024f) + 0.25f * crisis;
  }

  __device__ State rates(State s) const {
    float mm = s.a * s.a + s.b * s.b, uu = mm + s.c * s.c, m = sqrtf(mm), u = sqrtf(uu), r = 1.0f / (mm * uu);
    float cl, cd;
    coefficients(reynoldsPerSpeed * u, s.w * mm * m * r, cl, cd);
    float D = drag * u * cd, L = lift * (uu * uu) * (r * m) * cl;
    return {D * s.a - L * s.b, L * s.a + (D * s.b - gravity2), D * s.c - gravity3, decay * u * s.w};
  }

  __device__ unsigned outsideData(State s, const Scene &scene) const {
    float mm = s.a * s.a + s.b * s.b, u = sqrtf(mm + s.c * s.c), ratio = s.w * sqrtf(mm) / (u * u), re = reynoldsPerSpeed * u;
    return (re < scene.reynoldsLow || re > scene.reynoldsHigh ? 1u : 0u) | (ratio < scene.spinLow || ratio > scene.spinHigh ? 2u : 0u);
  }
};

struct Quintic {
  float y0, V0, F0, c3, c4, c5;
  __device__ Quintic(float h, float y0, float v0, float f0, float y1, float v1, float f1) : y0(y0) {
    V0 = v0 * h;
    F0 = 0.5f * f0 * h * h;
    float V1 = v1 * h, F1 = 0.5f * f1 * h * h, d = y1 - y0;
    c3 = 10.0f * d - 6.0f * V0 - 4.0f * V1 - 3.0f * F0 + F1;
    c4 = -15.0f * d + 8.0f * V0 + 7.0f * V1 + 3.0f * F0 - 2.0f * F1;
    c5 = 6.0f * d - 3.0f * V0 - 3.0f * V1 - F0 + F1;
  }
  __device__ float value(float x) const { return y0 + x * (V0 + x * (F0 + x * (c3 + x * (c4 + x * c5)))); }
  __device__ float slope(float x) const { return V0 + x * (2.0f * F0 + x * (3.0f * c3 + x * (4.0f * c4 + x * 5.0f * c5))); }
  __device__ float bend(float x) const { return 2.0f * F0 + x * (6.0f * c3 + x * (12.0f * c4 + x * 20.0f * c5)); }
};

__device__ inline Vector onQuintic(float x, float h, Vector moved, Vector v0, Vector v1, Vector k0, Vector k1) {
  float x3 = x * x * x;
  return (x3 * (10.0f + x * (6.0f * x - 15.0f))) * moved + (h * (x + x3 * (x * (8.0f - 3.0f * x) - 6.0f))) * v0 +
         (h * x3 * (x * (7.0f - 3.0f * x) - 4.0f)) * v1 + (0.5f * h * h * (x * x + x3 * (x * (3.0f - x) - 3.0f))) * k0 +
         (0.5f * h * h * x3 * (1.0f + x * (x - 2.0f))) * k1;
}

__global__ void flights(const float *in, float *out, Scene scene) {
  unsigned i = blockIdx.x * blockDim.x + threadIdx.x, n = scene.flights;
  if (i >= n) return;
  float sa, ca, sd, cd, st, ct, speed = in[i], spinRate = in[2 * n + i];
  sincosf(in[n + i], &sa, &ca);
  sincosf(in[3 * n + i], &sd, &cd);
  sincosf(in[4 * n + i], &st, &ct);
  float back = spinRate * ct, sideward = spinRate * st;
  float wx = -back * sd + sideward * sa * cd, wy = -sideward * ca, wz = back * cd + sideward * sa * sd;
  float spin = sqrtf(wx * wx + wy * wy + wz * wz);
  float nx = spin > 0 ? wx / spin : 0.0f, ny = spin > 0 ? wy / spin : 0.0f, nz = spin > 0 ? wz / spin : 1.0f;
  float level = sqrtf(nx * nx + nz * nz), x1 = level > 1e-6f ? nz / level : 1.0f, z1 = level > 1e-6f ? -nx / level : 0.0f;
  float x2 = ny * z1, y2 = nz * x1 - nx * z1, z2 = -ny * x1;
  Vector up = {0.0f, y2, ny};
  Vector normal = {-scene.slopeX * x1 - scene.slopeZ * z1, y2 - scene.slopeX * x2 - scene.slopeZ * z2, ny - scene.slopeX * nx - scene.slopeZ * nz};
  float normalWind = -scene.slopeX * scene.windAlong - scene.slopeZ * scene.windAcross;
  bool sloped = scene.slopeX != 0.0f || scene.slopeZ != 0.0f;
  float force = scene.density * scene.force;
  Flight f = {-force, spin == 0.0f ? 0.0f : force, -scene.spinDecay * (scene.density / 1.225f) / scene.radius, scene.density * 2.0f * scene.radius / scene.viscosity, 9.80665f * y2, 9.80665f * ny};
  float ux = speed * ca * cd - scene.windAlong, uy = speed * sa, uz = speed * ca * sd - scene.windAcross;
  State s = {x1 * ux + z1 * uz, x2 * ux + y2 * uy + z2 * uz, nx * ux + ny * uy + nz * uz, scene.radius * spin};
  Vector d = {0.0f, 0.0f, 0.0f};
  float t = 0.0f, height = -scene.elevation, climb = dot(normal, velocityOf(s)) + normalWind, apex = 0.0f;
  bool above = height > 0.0f || (height == 0.0f && climb > 0.0f);
  unsigned ended = 2, bits = 0;
  if (above || climb > 0.0f) {
    State k1 = f.rates(s);
    bits = f.outsideData(s, scene);
    float next = 2.0f / sqrtf(sqrtf(dot(velocityOf(s), velocityOf(s))) + 1.0f), h = next, fall = dot(normal, velocityOf(k1));
    bool aimed = false, toGround = false;
    for (int attempt = 0; attempt <= 400; attempt++) {
      if (!toGround) {
        if (t >= scene.timeLimit) { ended = 1; t = scene.timeLimit; break; }
        h = t + next > scene.timeLimit ? scene.timeLimit - t : next;
        float uu = dot(velocityOf(s), velocityOf(s)), kk = dot(velocityOf(k1), velocityOf(k1)), vy = dot(up, velocityOf(s)), ay = dot(up, velocityOf(k1));
        if (h * h * kk > uu) h = sqrtf(uu / kk);
        if (vy <= 0.0f && ay > 0.0f) h = fminf(h, fmaxf(-1.5f * vy / ay, 0.1f * h));
        aimed = false;
        if (above && fall < 0.0f && climb + 3.0f * h * fall < 0.0f) {
          float toGo = (climb + sqrtf(climb * climb - 2.0f * fall * height)) / -fall;
          if (toGo > 0.0f && t + toGo < scene.timeLimit) {
            aimed = toGo < 1.1f * h;
            h = toGo < 1.1f * h ? toGo : toGo < 2.0f * h ? 0.5f * toGo : h;
          }
        }
      }
      State k2 = f.rates(s + h * (0.161f * k1));
      State k3 = f.rates(s + h * (-0.008480655492356989f * k1 + 0.335480655492357f * k2));
      State k4 = f.rates(s + h * (2.8971530571054935f * k1 + -6.359448489975075f * k2 + 4.3622954328695815f * k3));
      State k5 = f.rates(s + h * (5.325864828439257f * k1 + -11.748883564062828f * k2 + 7.4955393428898365f * k3 + -0.09249506636175525f * k4));
      State k6 = f.rates(s + h * (5.86145544294642f * k1 + -12.92096931784711f * k2 + 8.159367898576159f * k3 + -0.071584973281401f * k4 + -0.028269050394068383f * k5));
      State sn = s + h * (0.09646076681806523f * k1 + 0.01f * k2 + 0.4798896504144996f * k3 + 1.379008574103742f * k4 + -3.290069515436081f * k5 + 2.324710524099774f * k6);
      Vector moved = h * (velocityOf(s) + h * velocityOf(0.0964607668180637f * k1 + 0.008389999999998565f * k2 + 0.32296573472895673f * k3 + 0.13790085741037425f * k4 + -0.06571735895739762f * k5));
      State kn = f.rates(sn);
      Vector e = velocityOf(0.001780011052225777f * k1 + 0.0008164344596567469f * k2 + -0.007880878010261995f * k3 + 0.1447110071732629f * k4 + -0.5823571654525552f * k5 + 0.45808210592918697f * k6 + -0.015151515151515152f * kn);
      float missed = h * sqrtf(dot(e, e)), newHeight = height + dot(normal, moved) + normalWind * h, newClimb = dot(normal, velocityOf(sn)) + normalWind;
      if (toGround) {
        if (!(newClimb < 0.0f)) break;
        float miss = newHeight / newClimb;
        if (fabsf(miss) > 1e-4f) { h -= miss; continue; }
        t += h - miss;
        d = d + moved + (-miss) * (velocityOf(sn) + (-0.5f * miss) * velocityOf(kn));
        ended = 0;
        break;
      }
      float factor = fminf(fmaxf(0.9f * powf(fmaxf(missed, 1e-9f) * 1e5f, -0.2f), 0.3f), 3.0f);
      next = h * factor;
      if (!(missed < 4e-5f)) continue;
      float vy = dot(up, velocityOf(s)), newVy = dot(up, velocityOf(sn));
      if (above && (newHeight < 0.0f ? (height <= 0.0f && !aimed) || (sloped && vy > 0.0f) : climb < 0.0f && newClimb > 0.0f)) break;
      if (!above && newHeight <= 0.0f && newClimb <= 0.0f) break;
      if (vy > 0.0f && newVy <= 0.0f) {
        Quintic q(h, dot(up, d), vy, dot(up, velocityOf(k1)), dot(up, d + moved), newVy, dot(up, velocityOf(kn)));
        float x = q.V0 / (sqrtf(fmaxf(0.0f, q.F0 * q.F0 - q.V0 * (newVy * h - q.V0 - 2.0f * q.F0))) - q.F0);
        x -= q.slope(x) / q.bend(x);
        x -= q.slope(x) / q.bend(x);
        apex = fmaxf(apex, q.value(x));
      }
      bits |= f.outsideData(sn, scene);
      float miss = 0.0f;
      if (above && (newHeight < 0.0f || (aimed && t + h < scene.timeLimit))) {
        Quintic q(h, height, climb, fall, newHeight, newClimb, dot(normal, velocityOf(kn)));
        float x = 1.0f - newHeight / (newClimb * h);
        x -= q.value(x) / q.slope(x);
        x -= q.value(x) / q.slope(x);
        x -= q.value(x) / q.slope(x);
        if (!(x > 0.0f && x < 1.5f)) break;
        miss = (x - 1.0f) * h;
        if (fabsf(miss) < 0.1f * h) {
          d = d + onQuintic(x, h, moved, velocityOf(s), velocityOf(sn), velocityOf(k1), velocityOf(kn));
          t += h + miss;
          ended = 0;
          break;
        }
        toGround = newHeight < 0.0f || miss < 0.3f * next;
      }
      d = d + moved;
      s = sn;
      k1 = kn;
      t += h;
      height = newHeight;
      climb = newClimb;
      fall = dot(normal, velocityOf(kn));
      above = above || height > 0.0f;
      if (toGround) h = miss;
    }
  }
  float x = x1 * d.a + x2 * d.b + nx * d.c + t * scene.windAlong, y = y2 * d.b + ny * d.c, z = z1 * d.a + z2 * d.b + nz * d.c + t * scene.windAcross;
  if (ended == 0 && t > scene.timeLimit) ended = 2;
  out[i] = sqrtf(x * x + z * z);
  out[n + i] = z;
  out[2 * n + i] = fmaxf(apex, y);
  out[3 * n + i] = t;
  reinterpret_cast<unsigned *>(out)[4 * n + i] = ended | (bits << 2);
}

static void check(cudaError_t error) {
  if (error == cudaSuccess) return;
  fprintf(stderr, "%s\n", cudaGetErrorString(error));
  exit(1);
}

int main(int, char **argv) {
  unsigned n = strtoul(argv[3], nullptr, 10), repeats = strtoul(argv[4], nullptr, 10);
  Scene scene = {0, 0, 0, 0, 0, strtof(argv[5], nullptr), strtof(argv[6], nullptr), strtof(argv[7], nullptr), strtof(argv[8], nullptr), strtof(argv[9], nullptr), 60.0f, 70000.0f, 230000.0f, 0.02f, 0.6f, n};
  std::vector<float> host(5 * size_t(n));
  FILE *file = fopen(argv[1], "rb");
  if (!file || fread(host.data(), 4, host.size(), file) != host.size()) return 1;
  fclose(file);
  float *in, *out;
  check(cudaMalloc(&in, 4 * host.size()));
  check(cudaMalloc(&out, 4 * host.size()));
  check(cudaMemcpy(in, host.data(), 4 * host.size(), cudaMemcpyHostToDevice));
  cudaEvent_t start, stop;
  check(cudaEventCreate(&start));
  check(cudaEventCreate(&stop));
  float best = 1e9f;
  for (unsigned k = 0; k < repeats; k++) {
    check(cudaEventRecord(start));
    for (int again = 0; again < 8; again++) flights<<<(n + BLOCK - 1) / BLOCK, BLOCK>>>(in, out, scene);
    check(cudaEventRecord(stop));
    check(cudaEventSynchronize(stop));
    float ms;
    check(cudaEventElapsedTime(&ms, start, stop));
    best = fminf(best, ms / 8);
  }
  check(cudaMemcpy(host.data(), out, 4 * host.size(), cudaMemcpyDeviceToHost));
  file = fopen(argv[2], "wb");
  if (!file || fwrite(host.data(), 4, host.size(), file) != host.size()) return 1;
  fclose(file);
  printf("%.9g\n", best / 1000);
}
