# Plain Python version of the generator; prints the rows of generator.dat.
M=(1<<64)-1
def sm(s):
    s=(s+0x9E3779B97F4A7C15)&M; z=s
    z=((z^(z>>30))*0xBF58476D1CE4E5B9)&M; z=((z^(z>>27))*0x94D049BB133111EB)&M
    return s,z^(z>>31)
rot=lambda x,k:((x<<k)|(x>>(64-k)))&M
def xo(st,n):
    s=list(st);out=[]
    for _ in range(n):
        out.append((rot((s[1]*5)&M,7)*9)&M); t=(s[1]<<17)&M
        s[2]^=s[0];s[3]^=s[1];s[1]^=s[2];s[0]^=s[3];s[2]^=t;s[3]=rot(s[3],45)
    return out
def seeded(seed,n):
    st=[]
    for _ in range(4): seed,z=sm(seed); st.append(z)
    return xo(st,n)
def mixed(seed,names):
    h=14695981039346656037
    for n in names:
        for b in n.encode(): h=((h^b)*1099511628211)&M
        h=((h^255)*1099511628211)&M
    _,z=sm(seed); _,z=sm(z^h); return z
def main():
    print("state | 1 2 3 4 |", *xo([1,2,3,4],10), "| from memory")
    for seed in (0,1,42,1234567,M): print("seed |",seed,"|",*seeded(seed,6),"| computed")
    for seed,names in ((7,("noise-thermal","s01")),(7,("noise-thermal","s02")),(7,("noise-thermals","01")),(8,("gain-stage","Zoë"))): print("stream |",seed,*names,"|",*seeded(mixed(seed,names),4),"| computed")
if __name__ == "__main__": main()
